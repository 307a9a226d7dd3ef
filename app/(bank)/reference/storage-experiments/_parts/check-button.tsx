'use client';

import { useFormState } from '@/app/_components/form/form';

/** Reads the table without saving it. */
export function CheckButton() {
  const { pending } = useFormState();
  return (
    <button type="submit" name="intent" value="check" className="button" aria-disabled={pending || undefined}>
      Check only
    </button>
  );
}
