/*
 * What a test costs in hands: rough figures of our own, to compare plans with each other and to fill an afternoon. Not
 * measured.
 */

const MINUTES_TO_BEGIN = 3;
const SECONDS_TO_LAY_A_SEED = 4;
const MINUTES_A_DISH_AND_COUNT = 1;
const SECONDS_TO_CLASS_A_SEED = 2;

/**
 * Minutes of work from laying out to the last count.
 *
 * @param dishes  integer >= 1
 * @param seeds   integer >= 1
 * @param counts  days of counting, integer >= 1
 * @returns whole minutes; a rough figure
 * @throws RangeError when an argument is no whole number of at least 1
 * Own figures. Checked in tests/domain/germination/plan/bench-minutes.test.ts
 */
export function benchMinutes({ dishes, seeds, counts }: { dishes: number; seeds: number; counts: number }): number {
  for (const [name, value] of Object.entries({ dishes, seeds, counts })) {
    if (!Number.isInteger(value) || value < 1)
      throw new RangeError(`benchMinutes: ${name} must be an integer >= 1, got ${value}`);
  }
  const laying = MINUTES_TO_BEGIN + (seeds * SECONDS_TO_LAY_A_SEED) / 60;
  const counting = counts * dishes * MINUTES_A_DISH_AND_COUNT + (seeds * SECONDS_TO_CLASS_A_SEED) / 60;
  return Math.ceil(laying + counting);
}
