import clsx from 'clsx';
import { ClassIcon } from '@/app/(bank)/germination/_parts/seed-glyph';
import type { ClassCounts, SeedClass } from '@/lib/domain/germination/seed-classes';

interface Props {
  offered: readonly SeedClass[];
  chosen: SeedClass;
  found: ClassCounts;
  /** null: all classes are offered already */
  onMore: (() => void) | null;
  onChoose: (seedClass: SeedClass) => void;
}

/** What a tap, a key and plus and minus count: one class at a time, each with what was found of it. */
export function ClassChooser({ offered, chosen, found, onMore, onChoose }: Props) {
  return (
    <fieldset className="min-w-0">
      <legend className="sr-only">Class that is counted</legend>
      <div className="grid grid-cols-[repeat(auto-fit,minmax(3.625rem,1fr))] gap-1.5">
        {offered.map((seedClass) => (
          <label
            key={seedClass}
            className={clsx(
              'relative grid min-h-11 min-w-0 cursor-pointer content-center justify-items-center rounded-paper border px-0.5 py-1 has-focus-visible:outline-3 has-focus-visible:outline-indigo',
              seedClass === chosen ? 'border-ink bg-sheet font-bold ring-1 ring-ink' : 'border-rule',
            )}
          >
            <input
              type="radio"
              name="class"
              value={seedClass}
              checked={seedClass === chosen}
              onChange={() => onChoose(seedClass)}
              className="absolute inset-0 cursor-pointer appearance-none outline-none"
            />
            <span className="text-[0.8125rem] leading-tight">{seedClass}</span>
            <span className="flex items-center gap-1">
              <ClassIcon state={seedClass} />
              <span className="figures">{found[seedClass]}</span>
            </span>
          </label>
        ))}
        {onMore && (
          <button
            type="button"
            onClick={onMore}
            className="min-h-11 rounded-paper border border-rule px-0.5 text-[0.8125rem] leading-tight"
          >
            all five classes
          </button>
        )}
      </div>
    </fieldset>
  );
}
