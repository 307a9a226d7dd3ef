'use client';

import { useFormState } from './form';

/** What was said against something that this form does not ask for, because something else brings it along. */
export function FieldMessage({ name }: { name: string }) {
  const message = useFormState().state.fieldErrors[name];
  return message ? <p className="max-w-prose text-sm font-semibold text-madder">{message}</p> : null;
}
