'use client';

import { useId } from 'react';
import { useFormState } from './form';

interface Props {
  name: string;
  label: string;
  hint: string;
  accept: string;
}

/** Choosing a file. A browser never gives a chosen file back to a page, so after an error it is chosen again. */
export function FileField({ name, label, hint, accept }: Props) {
  const { state } = useFormState();
  const id = useId();
  const error = state.fieldErrors[name];
  return (
    <div className="grid gap-1">
      <label htmlFor={id} className="font-semibold">
        {label}
      </label>
      <p id={`${id}-hint`} className="label">
        {hint}
      </p>
      <input
        id={id}
        name={name}
        type="file"
        accept={accept}
        aria-invalid={error ? true : undefined}
        aria-describedby={`${id}-hint ${id}-error`}
        className="field file:mr-4 file:cursor-pointer file:border-0 file:bg-sunk file:px-3 file:py-1.5 file:font-semibold file:text-ink"
      />
      <p id={`${id}-error`} className="text-sm font-semibold text-madder empty:hidden">
        {error}
      </p>
    </div>
  );
}
