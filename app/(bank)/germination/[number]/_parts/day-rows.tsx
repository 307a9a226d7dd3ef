'use client';

import { useFormState } from '@/app/_components/form/form';
import { type ClassCounts, SEED_CLASSES, type SeedClass } from '@/lib/domain/germination/seed-classes';

interface Row {
  dishId: string;
  position: number;
  /** seeds that can be found on this day at most */
  most: number;
  found: ClassCounts | null;
}

/** A box for each dish and class; the message of a dish stands below its boxes. */
export function DayRows({ rows }: { rows: Row[] }) {
  return (
    <div className="grid gap-4">
      {rows.map((row) => (
        <DishBoxes key={row.dishId} row={row} />
      ))}
    </div>
  );
}

function DishBoxes({ row: { dishId, position, most, found } }: { row: Row }) {
  const { state } = useFormState();
  const name = (seedClass: SeedClass) => `dishes.${dishId}.${seedClass}`;
  const messages = SEED_CLASSES.map((seedClass) => state.fieldErrors[name(seedClass)]).filter(Boolean);
  const messageId = `${dishId}-message`;
  return (
    <fieldset className="grid gap-1 border-b border-rule pb-4 last:border-0 last:pb-0">
      <legend className="font-semibold">
        Dish {position} <span className="quiet font-normal">at most {most} on this day</span>
      </legend>
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
    </fieldset>
  );
}

/** A count of nothing shows its 0 once, so that its row is not taken for one that was not looked at. */
function shown(found: ClassCounts | null, seedClass: SeedClass): string {
  if (found === null) return '';
  const count = found[seedClass];
  return count > 0 || seedClass === 'normal' ? String(count) : '';
}
