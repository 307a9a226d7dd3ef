/*
 * How many seeds tell a good lot from a poor one in a single test.
 *
 * Counts are whole, so the chance of error goes up and down like a saw as seeds are added: 60 seeds may do where 61 do
 * not. Two numbers are therefore given: the smallest that does, and the steady one, from which every larger test does
 * too. A test that loses or gains a few seeds on the way is safe with the steady one.
 */
import { edgeBetween } from '../../statistics/edge-between';
import { requireProportion } from '../../statistics/require-proportion';
import { addCounts, type Dishes, germinatedCountChances, INDEPENDENT_SEEDS } from './germinated-count';
import { requireSeeds } from './require-seeds';
import {
  type ErrorGoal,
  isWithin,
  type SingleTest,
  singleTest,
  singleTestFrom,
  singleTestIn,
} from './single-test-power';

/** Independent seeds: no larger test is looked at. Two levels half a point apart near 50 % take this many. */
const MOST_SEEDS = 200_000;
/** Uneven dishes: beyond this the distribution is slow to add up, and no lot spares so many. */
const MOST_SEEDS_IN_DISHES = 2_000;

export interface SeedsToTellInput extends ErrorGoal {
  /** seeds lie in dishes that may differ by more than chance; even dishes unless told. Uneven: whole dishes are counted */
  dishes?: Dishes;
  /** seeds that may be used up, integer >= 1 */
  seedsAvailable?: number;
}

export type SeedsToTell =
  | {
      ok: true;
      /** fewest seeds from which every larger test keeps both limits as well */
      steady: SingleTest;
      /** fewest seeds that keep both limits at all */
      smallest: SingleTest;
      /** every test from `steady` up to this many seeds keeps the limits; Infinity: all do, proved by a bound */
      steadyUpTo: number;
    }
  | {
      ok: false;
      reason: 'not-enough-seeds';
      seedsAvailable: number;
      /** what a test of all of them would do */
      best: SingleTest;
    };

/**
 * Fewest seeds for a single test that keeps a poor lot, and regrows a good one, at most as often as wanted.
 *
 * For independent seeds Chernoff's bound gives a number from which every test keeps the limits; from there the search
 * goes down, one seed at a time, to the last that does not. Uneven dishes are tried one dish at a time.
 *
 * @param input  see SeedsToTellInput
 * @returns both numbers with their critical counts and real error rates; or that the seeds available do not suffice
 * @throws RangeError when an argument is outside its range
 * @see Chernoff (1952), Ann. Math. Statist. 23:493-507; Hoeffding (1963), J. Am. Stat. Assoc. 58:13-30 (from memory)
 * Checked against R, every size one by one: tests/golden/seeds-to-tell.json
 */
export function seedsToTell(input: SeedsToTellInput): SeedsToTell {
  const { dishes = INDEPENDENT_SEEDS } = input;
  requireErrorGoal('seedsToTell', input);
  const uneven = dishes.correlation > 0 && dishes.dishSize > 1;
  const { seedsAvailable = uneven ? MOST_SEEDS_IN_DISHES : MOST_SEEDS } = input;
  requireSeeds('seedsToTell', 'seedsAvailable', seedsAvailable, 1);
  return uneven ? inUnevenDishes(input, dishes, seedsAvailable) : withIndependentSeeds(input, seedsAvailable);
}

/**
 * Refuses levels and limits that no test can have.
 *
 * @param functionName  the caller, named in the message
 * @param goal          poor and good: proportions in [0, 1], poor < good; both limits in (0, 1)
 * @throws RangeError naming the function, the argument and the value
 * Checked in tests/domain/germination/sample-size/seeds-to-tell.test.ts
 */
export function requireErrorGoal(functionName: string, { poor, good, falseKeep, falseRegrow }: ErrorGoal): void {
  requireProportion(functionName, 'poor', poor);
  requireProportion(functionName, 'good', good);
  if (!(good > poor)) throw new RangeError(`${functionName}: good must be above poor (${poor}), got ${good}`);
  requireProportion(functionName, 'falseKeep', falseKeep, true);
  requireProportion(functionName, 'falseRegrow', falseRegrow, true);
}

function withIndependentSeeds(goal: ErrorGoal, seedsAvailable: number): SeedsToTell {
  const most = Math.min(seedsAvailable, MOST_SEEDS);
  const reaches = (test: SingleTest) => isWithin(test.falseRegrow, goal.falseRegrow);
  const withAll = singleTest(most, goal);
  // Where all the seeds fail, no number within reach is steady; that saves the search, which grows with the number.
  if (!reaches(withAll)) return { ok: false, reason: 'not-enough-seeds', seedsAvailable: most, best: withAll };
  const provedFrom = seedsThatSurelyDo(goal);
  // From the last size that fails, one more is steady. The critical count changes by at most one a step.
  let steady = singleTest(Math.max(provedFrom, 1), goal);
  while (steady.seeds > 1) {
    const smaller = singleTest(steady.seeds - 1, goal, steady.keepAtLeast);
    if (!reaches(smaller)) break;
    steady = smaller;
  }
  if (steady.seeds > most) return { ok: false, reason: 'not-enough-seeds', seedsAvailable: most, best: withAll };
  let smallest = singleTest(1, goal);
  while (!reaches(smallest)) smallest = singleTest(smallest.seeds + 1, goal, smallest.keepAtLeast);
  return { ok: true, steady, smallest, steadyUpTo: Number.POSITIVE_INFINITY };
}

function inUnevenDishes(goal: ErrorGoal, dishes: Dishes, seedsAvailable: number): SeedsToTell {
  const most = Math.min(seedsAvailable, MOST_SEEDS_IN_DISHES);
  const dishAtPoor = germinatedCountChances(dishes.dishSize, goal.poor, dishes);
  const dishAtGood = germinatedCountChances(dishes.dishSize, goal.good, dishes);
  let atPoor = dishAtPoor;
  let atGood = dishAtGood;
  let smallest: SingleTest | null = null;
  let steady: SingleTest | null = null;
  let checkedUpTo = 0;
  for (let seeds = dishes.dishSize; seeds <= most; seeds += dishes.dishSize) {
    if (seeds > dishes.dishSize) {
      atPoor = addCounts(atPoor, dishAtPoor);
      atGood = addCounts(atGood, dishAtGood);
    }
    const test = singleTestFrom(atPoor, atGood, goal.falseKeep);
    checkedUpTo = seeds;
    if (!isWithin(test.falseRegrow, goal.falseRegrow)) {
      steady = null;
    } else {
      smallest ??= test;
      steady ??= test;
    }
  }
  if (smallest && steady) return { ok: true, steady, smallest, steadyUpTo: checkedUpTo };
  return { ok: false, reason: 'not-enough-seeds', seedsAvailable: most, best: singleTestIn(most, goal, dishes) };
}

/*
 * With the cut at share q of n seeds, poor < q < good: P(at least nq | poor) <= exp(-n KL(q, poor)) and
 * P(below nq | good) <= exp(-n KL(q, good)). The q at which both limits are met with the same n is found by halving.
 * For every larger n the lowest allowed q falls, both bounds hold all the more, and the exact cut, which is never
 * higher than this one, regrows a good lot even less often.
 */
function seedsThatSurelyDo({ poor, good, falseKeep, falseRegrow }: ErrorGoal): number {
  const needForKeep = (share: number) => -Math.log(falseKeep) / divergence(share, poor);
  const needForRegrow = (share: number) => -Math.log(falseRegrow) / divergence(share, good);
  // A trillionth of the way stays clear of the ends themselves, where a level of 0 or 1 divides by nothing.
  const isTooLow = (share: number) => needForKeep(share) > needForRegrow(share);
  const [low, high] = edgeBetween(isTooLow, poor, good, 1e-12 * (good - poor));
  const share = (low + high) / 2;
  return Math.ceil(Math.max(needForKeep(share), needForRegrow(share)));
}

/** Kullback-Leibler divergence of a coin of chance `from` seen as one of chance `to`; Infinity when that is impossible. */
function divergence(from: number, to: number): number {
  return term(from, to) + term(1 - from, 1 - to);
}

function term(from: number, to: number): number {
  return from === 0 ? 0 : from * Math.log(from / to);
}
