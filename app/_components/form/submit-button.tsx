'use client';

import type { ReactNode } from 'react';
import { useFormState } from './form';

/** The form's one main action. While it is under way a second press does nothing. */
export function SubmitButton({
  children,
  busy = 'Saving …',
  quiet = false,
}: {
  children: ReactNode;
  busy?: string;
  quiet?: boolean;
}) {
  const { pending } = useFormState();
  return (
    <button
      type="submit"
      className={quiet ? 'button' : 'button main'}
      aria-disabled={pending || undefined}
      onClick={(event) => pending && event.preventDefault()}
    >
      {pending ? busy : children}
    </button>
  );
}
