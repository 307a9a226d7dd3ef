'use client';

import { useFormState } from '@/app/_components/form/form';

/** Close, or keep the decisions for later. */
export function CloseButtons() {
  const { pending } = useFormState();
  const still = (event: React.MouseEvent) => pending && event.preventDefault();
  return (
    <div className="flex flex-wrap gap-2">
      <button
        type="submit"
        name="intent"
        value="close"
        className="button main"
        aria-disabled={pending || undefined}
        onClick={still}
      >
        {pending ? 'Saving …' : 'Close the stock-take'}
      </button>
      <button
        type="submit"
        name="intent"
        value="save"
        className="button"
        aria-disabled={pending || undefined}
        onClick={still}
      >
        Save decisions for later
      </button>
    </div>
  );
}
