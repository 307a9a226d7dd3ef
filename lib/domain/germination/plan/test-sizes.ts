/*
 * How seeds are laid out: usual sizes of a test, and dishes for any other number.
 */

export interface TestSize {
  dishes: number;
  seedsEach: number;
}

/** Sizes offered, fewest seeds first. Two dishes at least, so that one that goes mouldy is noticed. Common practice. */
export const TEST_SIZES: readonly TestSize[] = [
  { dishes: 2, seedsEach: 10 },
  { dishes: 2, seedsEach: 15 },
  { dishes: 2, seedsEach: 20 },
  { dishes: 2, seedsEach: 25 },
  { dishes: 3, seedsEach: 20 },
  { dishes: 3, seedsEach: 25 },
  { dishes: 4, seedsEach: 25 },
  { dishes: 3, seedsEach: 50 },
  { dishes: 4, seedsEach: 50 },
  { dishes: 4, seedsEach: 100 },
];

/** Seeds set at a time by a plan in groups. */
export const GROUP_SEEDS = 40;
/** Most seeds laid in one dish of a group. */
const MOST_IN_DISH = 25;

/** Seeds of a size, all dishes together. */
export const seedsOf = ({ dishes, seedsEach }: TestSize): number => dishes * seedsEach;

/** How a size is written on forms and labels: '4x25'. */
export const sizeKey = ({ dishes, seedsEach }: TestSize): string => `${dishes}x${seedsEach}`;

/**
 * A number of seeds in as few dishes as hold it, as alike as can be: at least two where there are two seeds.
 *
 * @param seeds  integer >= 1
 * @returns seeds of each dish, the fuller first; they add to `seeds`
 * @throws RangeError when seeds is no whole number of at least 1
 * Checked in tests/domain/germination/plan/test-sizes.test.ts
 */
export function dishesFor(seeds: number): number[] {
  if (!Number.isInteger(seeds) || seeds < 1)
    throw new RangeError(`dishesFor: seeds must be an integer >= 1, got ${seeds}`);
  const dishes = Math.max(Math.min(2, seeds), Math.ceil(seeds / MOST_IN_DISH));
  const least = Math.floor(seeds / dishes);
  return Array.from({ length: dishes }, (_, index) => least + (index < seeds - least * dishes ? 1 : 0));
}
