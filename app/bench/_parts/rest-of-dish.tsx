import type { SeedClass } from '@/lib/domain/germination/seed-classes';
import { keepFocus } from './keep-focus';
import type { Counting } from './use-counting';

/** At the final count every seed gets a class. What is left is classed by a button that says so, never by itself. */
export function RestOfDish({ counting, hardSeedOccurs }: { counting: Counting; hardSeedOccurs: boolean }) {
  const { chosen, left } = counting;
  const offered: SeedClass[] = hardSeedOccurs ? ['hard', 'dead'] : ['dead'];
  if (chosen !== 'normal' && !offered.includes(chosen)) offered.push(chosen);
  return (
    <div className="flex flex-wrap gap-1.5">
      {offered.map((seedClass) => (
        <button
          key={seedClass}
          type="button"
          className="button flex-1 px-2!"
          onMouseDown={keepFocus}
          onClick={() => counting.restAre(seedClass)}
        >
          Rest are {seedClass} ({left})
        </button>
      ))}
    </div>
  );
}
