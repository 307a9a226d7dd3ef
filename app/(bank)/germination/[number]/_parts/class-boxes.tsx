'use client';

import { useFormState } from '@/app/_components/form/form';
import { type ClassCounts, SEED_CLASSES, type SeedClass } from '@/lib/domain/germination/seed-classes';

/** A box for each class; what is wrong with any of them stands below. */
export function ClassBoxes({ prefix, found }: { prefix: string; found: ClassCounts | null }) {
  const { state } = useFormState();
  const name = (seedClass: SeedClass) => `${prefix}.${seedClass}`;
  const messages = SEED_CLASSES.map((seedClass) => state.fieldErrors[name(seedClass)]).filter(Boolean);
  const messageId = `${prefix}-message`;
  return (
    <>
      <div className="grid grid-cols-3 gap-3 sm:grid-cols-5">
        {SEED_CLASSES.map((seedClass) => (
          <label key={seedClass} className="grid gap-1">
            <span className="label">{seedClass}</span>
            <input
              key={state.attempt}
              name={name(seedClass)}
              inputMode="numeric"
              autoComplete="off"
              defaultValue={state.values[name(seedClass)] ?? shown(found, seedClass)}
              aria-invalid={state.fieldErrors[name(seedClass)] ? true : undefined}
              aria-describedby={messageId}
              className="field figures"
            />
          </label>
        ))}
      </div>
      <p id={messageId} className="text-sm font-semibold text-madder empty:hidden">
        {messages.join(' ')}
      </p>
    </>
  );
}

/** A count of nothing shows its 0 once, so that its row is not taken for one that was not looked at. */
function shown(found: ClassCounts | null, seedClass: SeedClass): string {
  if (found === null) return '';
  const count = found[seedClass];
  return count > 0 || seedClass === 'normal' ? String(count) : '';
}
