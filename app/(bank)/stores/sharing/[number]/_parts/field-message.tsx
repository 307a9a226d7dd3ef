'use client';

import { useFormState } from '@/app/_components/form/form';

/** What a refusal says of a field that the form does not show. */
export function FieldMessage({ name }: { name: string }) {
  const { state } = useFormState();
  const message = state.fieldErrors[name];
  return message ? <p className="max-w-prose text-sm font-semibold text-madder">{message}</p> : null;
}
