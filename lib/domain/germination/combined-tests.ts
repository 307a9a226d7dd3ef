/*
 * One germination from several tests of a lot: more seeds, and so a narrower interval, but only where the tests can be
 * taken for one.
 *
 * Seed ages, so tests are put together only when hardly any ageing lies between them, and the figure is that of the lot
 * as if it had not changed from the first to the last of them. A test that differs from the others by more than chance,
 * or whose own replicates do not agree, is left out and named, with the reason: the newest test that can be trusted
 * leads, and older ones join it.
 */
import { binomialInterval, type Interval } from '../statistics/binomial-interval';
import { exactHomogeneity } from '../statistics/exact-homogeneity';
import type { UnevenDishesInterval } from '../statistics/uneven-dishes-interval';
import { replicateHeterogeneity } from './heterogeneity';
import { intervalIfUneven } from './interval-if-uneven';
import { joinIntoHundreds, type NormalCount, rangeInPoints } from './normal-count';
import { replicateTolerance } from './replicate-tolerance';

export interface TestToCombine {
  /** what people call it: the test's number */
  name: string;
  /** day it was set, whole days since any fixed day */
  setOnDay: number;
  /** its dishes as counted */
  replicates: readonly NormalCount[];
  /** published ageing of the lot until that day, probits; null when it is not known */
  probitsLost: number | null;
}

export type LeftOutReason = 'replicates-disagree' | 'aged-between' | 'differs';

export interface LeftOutTest {
  name: string;
  reason: LeftOutReason;
  /** of the test that this one and those taken share one germination; only with reason 'differs' */
  pValue: number | null;
}

export interface CombinedTests {
  ok: true;
  /** names of the tests taken, newest first */
  taken: string[];
  leftOut: LeftOutTest[];
  germinated: number;
  seeds: number;
  /** germinated / seeds */
  proportion: number;
  /** Wilson, all seeds taken as independent */
  interval: Interval;
  /** the interval that allows for uneven dishes, where all dishes together differ by more than chance; otherwise null */
  unevenInterval: UnevenDishesInterval | null;
  /** whether the tests taken share one germination */
  homogeneity: Homogeneity;
  /** from the day the first of them was set to the last */
  daysApart: number;
}

export interface Homogeneity {
  chiSquare: number;
  degreesOfFreedom: number;
  /** of the chi-square; approximate */
  chiSquarePValue: number;
  /** exact; null where there are too many ways to go through, and then the chi-square decides */
  exactPValue: number | null;
}

export type CombinedResult =
  | CombinedTests
  | { ok: false; reason: 'fewer-than-two-tests' | 'none-to-combine'; leftOut: LeftOutTest[] };

/** Ageing between two tests that still counts as none, probits: about one point at 90 %. Our own choice. */
const NO_AGEING_PROBITS = 0.05;
/** Published equations promise too much for long cold storage: beyond five years they are not believed. Our own choice. */
const BELIEVED_DAYS = 1826;
/** Where the lot's ageing is not known, tests set within this many days are taken as of one time. Our own choice. */
const CLOSE_IN_TIME_DAYS = 365;
/** Tests that chance makes so different less often than this are said to differ. */
const SURPRISING = 0.05;

/**
 * Combines the tests of one lot that can be taken for one.
 *
 * @param input.tests  tests of one lot in any order, without those that were corrected since; of two set on one day the
 *                     later in the list counts as newer
 * @param input.level  probability in (0, 1) of the intervals, default 0.95
 * @returns the figure over the tests taken, with what was left out and why; or a refusal when fewer than two can be taken
 * @throws RangeError when a test has no replicate, or a count or the level is outside its range
 * @see Freeman & Halton (1951) for the exact test (from memory); the rules for leaving out: docs/methods/replicate-tolerance.md
 * Checked in tests/domain/germination/combined-tests.test.ts; its parts against R
 */
export function combineTests({
  tests,
  level = 0.95,
}: {
  tests: readonly TestToCombine[];
  level?: number;
}): CombinedResult {
  if (tests.length < 2) return { ok: false, reason: 'fewer-than-two-tests', leftOut: [] };
  const newestFirst = tests
    .map((test, place) => ({ test, place }))
    .sort((a, b) => b.test.setOnDay - a.test.setOnDay || b.place - a.place)
    .map(({ test }) => test);
  const taken: TestToCombine[] = [];
  const leftOut: LeftOutTest[] = [];
  for (const test of newestFirst) {
    const [newest] = taken;
    const leave = (reason: LeftOutReason, pValue: number | null = null) =>
      leftOut.push({ name: test.name, reason, pValue });
    if (!replicatesAgree(test.replicates)) leave('replicates-disagree');
    else if (!newest) taken.push(test);
    else if (agedBetween(test, newest)) leave('aged-between');
    else {
      const pValue = decisive(homogeneityOf([...taken, test]));
      if (pValue < SURPRISING) leave('differs', pValue);
      else taken.push(test);
    }
  }
  if (taken.length < 2) return { ok: false, reason: 'none-to-combine', leftOut };

  const dishes = taken.flatMap(({ replicates }) => replicates);
  const { germinated, seeds } = totalOf(dishes);
  const days = taken.map(({ setOnDay }) => setOnDay);
  return {
    ok: true,
    taken: taken.map(({ name }) => name),
    leftOut,
    germinated,
    seeds,
    proportion: germinated / seeds,
    interval: binomialInterval({ successes: germinated, trials: seeds, level }),
    unevenInterval: intervalIfUneven(dishes, level),
    homogeneity: homogeneityOf(taken),
    daysApart: Math.max(...days) - Math.min(...days),
  };
}

function replicatesAgree(replicates: readonly NormalCount[]): boolean {
  const compared = joinIntoHundreds(replicates);
  const tolerance = replicateTolerance(compared);
  return !tolerance.ok || rangeInPoints(compared) <= tolerance.toleratedRange;
}

function agedBetween(test: TestToCombine, newest: TestToCombine): boolean {
  const days = newest.setOnDay - test.setOnDay;
  if (test.probitsLost === null || newest.probitsLost === null) return days > CLOSE_IN_TIME_DAYS;
  return days > BELIEVED_DAYS || Math.abs(newest.probitsLost - test.probitsLost) > NO_AGEING_PROBITS;
}

function homogeneityOf(tests: readonly TestToCombine[]): Homogeneity {
  const totals = tests.map(({ replicates }) => totalOf(replicates));
  const chiSquare = replicateHeterogeneity(totals.map(({ germinated, seeds }) => ({ seeds, normal: germinated })));
  const exact = exactHomogeneity(totals.map(({ germinated, seeds }) => ({ successes: germinated, trials: seeds })));
  return {
    chiSquare: chiSquare?.chiSquare ?? 0,
    degreesOfFreedom: chiSquare?.degreesOfFreedom ?? 0,
    chiSquarePValue: chiSquare?.pValue ?? 1,
    exactPValue: exact.ok ? exact.pValue : null,
  };
}

const decisive = ({ exactPValue, chiSquarePValue }: Homogeneity): number => exactPValue ?? chiSquarePValue;

const totalOf = (dishes: readonly NormalCount[]) => ({
  germinated: dishes.reduce((sum, dish) => sum + dish.normal, 0),
  seeds: dishes.reduce((sum, dish) => sum + dish.seeds, 0),
});
