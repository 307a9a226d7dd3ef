import type { DayCount } from '@/lib/domain/germination/bench/day-counts';
import type { DishState } from '@/lib/domain/germination/bench/dish-state';
import { SEED_CLASSES, type SeedClass } from '@/lib/domain/germination/seed-classes';
import type { BenchCount, TappedPlaces } from '@/lib/schemas/bench-wire';

/** What is drawn at a place: a seed, what was found there on the day being counted, or nothing any more. */
export type SeedMark = SeedClass | 'left' | 'gone';

/**
 * What lies at each place of a dish, for drawing. Seeds that were tapped are marked where they lay; those that were only
 * counted take the next places in the order in which a dish is filled. Only numbers are recorded as findings, so
 * whatever the places say, as many seeds are drawn as were counted.
 *
 * @param state  the dish with all its days
 * @param on     the day being counted: its findings are shown, those of all other days were taken out
 * @returns a mark for each seed set, in the order of dishPlaces
 * Checked in tests/app/bench/seeds-in-dish.test.ts
 */
export function seedsInDish({ dish, days }: DishState<BenchCount>, on: string): SeedMark[] {
  const marks: SeedMark[] = Array.from({ length: dish.seeds }, () => 'left');
  const untapped: SeedMark[] = [];
  for (const day of days) {
    const places = placesOf(day);
    for (const seedClass of SEED_CLASSES) {
      const mark = day.on === on ? seedClass : 'gone';
      let counted = day.found?.[seedClass] ?? 0;
      for (const place of places?.[seedClass] ?? []) {
        if (counted > 0 && marks[place] === 'left') {
          marks[place] = mark;
          counted -= 1;
        }
      }
      for (; counted > 0; counted -= 1) untapped.push(mark);
    }
  }
  let place = 0;
  for (const mark of untapped) {
    while (place < marks.length && marks[place] !== 'left') place += 1;
    if (place === marks.length) break;
    marks[place] = mark;
  }
  return marks;
}

/** The places of whichever count holds. */
export function placesOf({ standing }: DayCount<BenchCount>): TappedPlaces | null {
  return standing.at(-1)?.places ?? null;
}
