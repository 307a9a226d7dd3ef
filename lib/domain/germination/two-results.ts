/*
 * Whether two germination results of one lot can both be right: a test and its repeat, or a test and a label.
 *
 * The published tolerance is a fixed number of points by the mean of the two. Beside it stands Fisher's exact test,
 * which holds for any number of seeds.
 */
import { fisherExactPValue } from '../statistics/fisher-exact';
import { requireCounts } from '../statistics/require-counts';

export interface GerminationCount {
  /** normal seedlings (or normal and hard, if so compared), integer, 0 <= germinated <= seeds */
  germinated: number;
  /** seeds set, integer, >= 1 */
  seeds: number;
}

export interface TwoResults {
  /** percentage points, >= 0 */
  difference: number;
  /** percentage points; null where the published rule does not reach (fewer than 200 seeds in a test) */
  tolerance: number | null;
  /** what `compatible` rests on: the published tolerance, or the exact test at 5 % where there is none */
  basis: 'published' | 'exact-test';
  compatible: boolean;
  /** two-sided p-value of Fisher's exact test that both come from seed of one germination */
  pValue: number;
}

/*
 * 7 CFR 201.63, edition of 2015: [mean of the two results from this percent on, tolerance in points], for tests of 400
 * seeds or more.
 */
const PUBLISHED_TOLERANCES: ReadonlyArray<readonly [number, number]> = [
  [96, 5],
  [90, 6],
  [80, 7],
  [70, 8],
  [60, 9],
  [0, 10],
];
const FULL_TEST_SEEDS = 400;
const SMALL_TEST_SEEDS = 200;
/** "When only 200 seeds of a component in a mixture are tested 2 percent shall be added": used for any 200-399. */
const SMALL_TEST_EXTRA_POINTS = 2;
const EXACT_TEST_LEVEL = 0.05;

/**
 * Compares two germination results.
 *
 * @param first   germinated and seeds
 * @param second  germinated and seeds
 * @returns difference and tolerance in percentage points, whether they are compatible, and the exact p-value
 * @throws RangeError when a count is not an integer in its range
 * @see 7 CFR 201.63
 * Checked in tests/domain/germination/two-results.test.ts; the p-value against R: tests/golden/fisher-exact.json
 */
export function compareTwoResults(first: GerminationCount, second: GerminationCount): TwoResults {
  for (const { germinated, seeds } of [first, second]) {
    requireCounts('compareTwoResults', germinated, seeds);
    if (seeds < 1) throw new RangeError(`compareTwoResults: seeds must be at least 1, got ${seeds}`);
  }
  const firstPercent = (100 * first.germinated) / first.seeds;
  const secondPercent = (100 * second.germinated) / second.seeds;
  const difference = withoutDust(Math.abs(firstPercent - secondPercent));
  const meanPercent = (firstPercent + secondPercent) / 2;
  const tolerance = publishedTolerance(meanPercent, Math.min(first.seeds, second.seeds));
  const pValue = fisherExactPValue(
    { successes: first.germinated, trials: first.seeds },
    { successes: second.germinated, trials: second.seeds },
  );
  return tolerance === null
    ? { difference, tolerance, basis: 'exact-test', compatible: pValue >= EXACT_TEST_LEVEL, pValue }
    : { difference, tolerance, basis: 'published', compatible: difference <= tolerance, pValue };
}

/** Percentages of 210 or 300 seeds leave a rounding error of 1e-14 that would tip a difference on the line over it. */
function withoutDust(percent: number): number {
  return Math.round(percent * 1e9) / 1e9;
}

function publishedTolerance(meanPercent: number, fewestSeeds: number): number | null {
  if (fewestSeeds < SMALL_TEST_SEEDS) return null;
  const line = PUBLISHED_TOLERANCES.find(([from]) => meanPercent >= from);
  if (!line) return null;
  return line[1] + (fewestSeeds < FULL_TEST_SEEDS ? SMALL_TEST_EXTRA_POINTS : 0);
}
