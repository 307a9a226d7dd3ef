import { NOTHING_FOUND } from '@/lib/domain/germination/bench/tray-count';
import { type ClassCounts, SEED_CLASSES, type SeedClass } from '@/lib/domain/germination/seed-classes';
import type { TappedPlaces } from '@/lib/schemas/bench-wire';
import type { SeedMark } from './seeds-in-dish';

/** What was found in a dish on the day being counted, and where it lay. */
export interface Finding {
  found: ClassCounts;
  places: TappedPlaces | null;
}

/**
 * The number of one class said anew; seeds of it that were tapped last are put back when there are fewer.
 *
 * Checked in tests/app/bench/change-count.test.ts
 */
export function withNumber({ found, places }: Finding, seedClass: SeedClass, number: number): Finding {
  const tapped = places?.[seedClass] ?? [];
  return {
    found: { ...found, [seedClass]: number },
    places: tapped.length > number ? { ...places, [seedClass]: tapped.slice(0, number) } : places,
  };
}

/**
 * What a tap on a seed does under the chosen class: a seed that lies there is found, one of that class is put back, one of
 * another class is classed anew. A place that was emptied on another day stays as it is.
 *
 * @returns the mark that the stroke leaves, or null where nothing can be done
 * Checked in tests/app/bench/change-count.test.ts
 */
export function strokeMark(mark: SeedMark | undefined, chosen: SeedClass): SeedClass | 'left' | null {
  if (mark === undefined || mark === 'gone') return null;
  return mark === chosen ? 'left' : chosen;
}

/**
 * The dish as drawn, with what a tap or a swipe changed in it. A swipe does to every seed on its way what it did to the
 * first, so that going over one twice changes nothing.
 *
 * @param marks    as drawn before
 * @param touched  places the finger went over
 * @param mark     what it leaves there
 * Checked in tests/app/bench/change-count.test.ts
 */
export function withStroke(
  marks: readonly SeedMark[],
  touched: ReadonlySet<number>,
  mark: SeedClass | 'left',
): SeedMark[] {
  return marks.map((before, place) => (touched.has(place) && before !== 'gone' ? mark : before));
}

/**
 * What a drawn dish says was found on its day: how many of each class, and where. Once a seed is tapped, those that were
 * only counted keep the places in which they were seen, or else another seed than the one tapped would come back.
 *
 * Checked in tests/app/bench/change-count.test.ts
 */
export function findingOf(marks: readonly SeedMark[]): Finding {
  const found = { ...NOTHING_FOUND };
  const places: TappedPlaces = {};
  for (const [place, mark] of marks.entries()) {
    if (mark === 'left' || mark === 'gone') continue;
    found[mark] += 1;
    const ofClass = places[mark];
    if (ofClass) ofClass.push(place);
    else places[mark] = [place];
  }
  return { found, places };
}

/**
 * A number typed digit by digit: the first digit begins anew, those after it are added.
 *
 * @param typed  digits typed so far in this go, '' before the first
 * @param digit  '0' to '9'
 * @returns the digits now, without zeros in front
 * Checked in tests/app/bench/change-count.test.ts
 */
export function typedOn(typed: string, digit: string): string {
  return String(Number(typed + digit));
}

/** The classes that are offered: at the final count all five, before it those that are taken out as they are found. */
export function classesOffered(all: boolean, hardSeedOccurs: boolean, found: ClassCounts | null): SeedClass[] {
  const order: readonly SeedClass[] = hardSeedOccurs ? HARD_FIRST : SEED_CLASSES;
  return order.filter((seedClass) => all || BEFORE_FINAL.includes(seedClass) || (found?.[seedClass] ?? 0) > 0);
}

const BEFORE_FINAL: readonly SeedClass[] = ['normal', 'abnormal', 'dead'];
const HARD_FIRST: readonly SeedClass[] = ['normal', 'hard', 'abnormal', 'fresh', 'dead'];
