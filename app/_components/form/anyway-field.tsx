'use client';

import { CheckField } from './fields';
import { useFormState } from './form';

interface Props {
  name: string;
  /** what is done although something was said against it: 'Store it anyway' */
  label: string;
}

/** Appears when something speaks against what was asked: whoever ticks it has read why not. */
export function AnywayField({ name, label }: Props) {
  const { state } = useFormState();
  const asked = state.fieldErrors[name] !== undefined || state.values[name] === 'on';
  return asked ? <CheckField name={name} label={label} /> : null;
}
