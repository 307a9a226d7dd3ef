/*
 * A test of one size against a line: set n seeds, and call the lot above the line if at least `keepAtLeast` germinate.
 *
 * Two things can go wrong: a poor lot (at or below `poor`) is kept, a good one (at or above `good`) is regrown. Both
 * chances are exact binomial tails, or with uneven dishes exact beta-binomial ones.
 */
import { binomialLowerTail, binomialUpperTail } from '../../statistics/binomial';
import { type Dishes, germinatedCountChances } from './germinated-count';

/** What a test must tell apart, and how often it may be wrong. */
export interface ErrorGoal {
  /** a lot whose true germination is this or less must not be kept, proportion in [0, 1) */
  poor: number;
  /** a lot whose true germination is this or more must not be regrown, proportion in (poor, 1] */
  good: number;
  /** largest chance of keeping a poor lot, in (0, 1) */
  falseKeep: number;
  /** largest chance of regrowing a good lot, in (0, 1) */
  falseRegrow: number;
}

export interface SingleTest {
  seeds: number;
  /** smallest count that calls the lot above the line; seeds + 1 when no count does */
  keepAtLeast: number;
  /** chance of keeping a lot exactly at `poor`; not above the goal */
  falseKeep: number;
  /** chance of regrowing a lot exactly at `good` */
  falseRegrow: number;
}

/** A chance this close to its limit, relatively, is a tie that rounding must not decide: it is within. */
export const TIE = 1e-10;

/**
 * Whether a chance of error is within its limit.
 *
 * @param chance  in [0, 1]
 * @param limit   in (0, 1)
 * @returns true also for a tie, up to rounding
 * Checked through seedsToTell against R: tests/golden/seeds-to-tell.json
 */
export function isWithin(chance: number, limit: number): boolean {
  return chance <= limit * (1 + TIE);
}

/**
 * The test of n seeds whose critical count is as low as the limit on keeping a poor lot allows.
 *
 * @param seeds   integer >= 1
 * @param goal    see ErrorGoal; only `poor`, `good` and `falseKeep` are used
 * @param startAt a guess at the critical count; a poor one costs time, not correctness
 * @returns the critical count and both real error rates; relative error below 1e-9
 * Checked against R `pbinom`: tests/golden/seeds-to-tell.json
 */
export function singleTest(seeds: number, goal: ErrorGoal, startAt = Math.round(seeds * goal.poor)): SingleTest {
  const falseKeepAt = (keepAtLeast: number) =>
    keepAtLeast > seeds ? 0 : binomialUpperTail({ successes: keepAtLeast, trials: seeds, probability: goal.poor });
  let keepAtLeast = Math.min(Math.max(startAt, 0), seeds + 1);
  while (!isWithin(falseKeepAt(keepAtLeast), goal.falseKeep)) keepAtLeast++;
  while (keepAtLeast > 0 && isWithin(falseKeepAt(keepAtLeast - 1), goal.falseKeep)) keepAtLeast--;
  return {
    seeds,
    keepAtLeast,
    falseKeep: falseKeepAt(keepAtLeast),
    falseRegrow: binomialLowerTail({ successes: keepAtLeast - 1, trials: seeds, probability: goal.good }),
  };
}

/**
 * The same for seeds in uneven dishes.
 *
 * @param atPoor  chances of each count at `poor` germination, from germinatedCountChances
 * @param atGood  the same at `good`
 * @param falseKeepLimit  in (0, 1)
 * @returns the critical count and both real error rates
 * Checked against R: tests/golden/seeds-to-tell.json
 */
export function singleTestFrom(atPoor: Float64Array, atGood: Float64Array, falseKeepLimit: number): SingleTest {
  const seeds = atPoor.length - 1;
  let falseKeep = 0;
  let keepAtLeast = seeds + 1;
  while (keepAtLeast > 0) {
    const withOneFewer = falseKeep + (atPoor[keepAtLeast - 1] as number);
    if (!isWithin(withOneFewer, falseKeepLimit)) break;
    falseKeep = withOneFewer;
    keepAtLeast--;
  }
  let falseRegrow = 0;
  for (let germinated = 0; germinated < keepAtLeast; germinated++) falseRegrow += atGood[germinated] as number;
  return { seeds, keepAtLeast, falseKeep, falseRegrow: Math.min(1, falseRegrow) };
}

/**
 * The test of n seeds, in even or uneven dishes.
 *
 * @param seeds   integer >= 1
 * @param goal    see ErrorGoal
 * @param dishes  how the seeds lie
 * @returns the critical count and both real error rates
 * @throws RangeError when the dishes are outside their range
 * Checked through seedsToTell
 */
export function singleTestIn(seeds: number, goal: ErrorGoal, dishes: Dishes): SingleTest {
  if (dishes.correlation === 0) return singleTest(seeds, goal);
  return singleTestFrom(
    germinatedCountChances(seeds, goal.poor, dishes),
    germinatedCountChances(seeds, goal.good, dishes),
    goal.falseKeep,
  );
}
