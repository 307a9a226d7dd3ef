'use client';

import { CheckField } from './fields';
import { useFormState } from './form';

/** Appears when moist seed would go into a freezer: whoever ticks it has read why not. */
export function StoreAnywayField() {
  const { state } = useFormState();
  const asked = state.fieldErrors.storeAnyway !== undefined || state.values.storeAnyway === 'on';
  return asked ? <CheckField name="storeAnyway" label="Store it anyway" /> : null;
}
