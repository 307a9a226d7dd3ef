import fc from 'fast-check';
import type { DishCounts } from '../../../../lib/domain/germination/time-course/dish-counts';

/** At most 4 dishes of at most 100 seeds: what a bench holds; days up to 30 in halves, so that ties occur. */
const days = fc
  .uniqueArray(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 8 })
  .map((halves) => halves.sort((a, b) => a - b).map((half) => half / 2));

const countsOn = (on: readonly number[]): fc.Arbitrary<DishCounts> =>
  fc
    .record({
      counts: fc.array(fc.integer({ min: 0, max: 12 }), { minLength: on.length, maxLength: on.length }),
      left: fc.integer({ min: 0, max: 20 }),
    })
    .map(({ counts, left }) => ({
      seeds: Math.max(
        1,
        counts.reduce((sum, count) => sum + count, left),
      ),
      inspections: on.map((toDay, i) => ({ fromDay: on[i - 1] ?? 0, toDay, germinated: counts[i] ?? 0 })),
    }));

/** Dishes that share their inspection days; each may stop early, as a lost dish does. */
export const alikeDishes: fc.Arbitrary<DishCounts[]> = days.chain((on) =>
  fc.array(
    fc.integer({ min: 1, max: on.length }).chain((length) => countsOn(on.slice(0, length))),
    { minLength: 1, maxLength: 4 },
  ),
);

/** Dishes with inspection days of their own. */
export const anyDishes: fc.Arbitrary<DishCounts[]> = fc.array(days.chain(countsOn), { minLength: 1, maxLength: 4 });

export const germinatedOf = (dishes: readonly DishCounts[]): number =>
  dishes.reduce((sum, { inspections }) => inspections.reduce((inner, { germinated }) => inner + germinated, sum), 0);

/** The same dishes with every day changed; the sowing moves along unless `change` leaves 0 where it is. */
export const onOtherDays = (dishes: readonly DishCounts[], change: (day: number) => number): DishCounts[] =>
  dishes.map(({ seeds, inspections }) => ({
    seeds,
    inspections: inspections.map(({ fromDay, toDay, germinated }) => ({
      fromDay: change(fromDay),
      toDay: change(toDay),
      germinated,
    })),
  }));

export const timesAsMany = (dishes: readonly DishCounts[], times: number): DishCounts[] =>
  dishes.map(({ seeds, inspections }) => ({
    seeds: seeds * times,
    inspections: inspections.map((line) => ({ ...line, germinated: line.germinated * times })),
  }));
