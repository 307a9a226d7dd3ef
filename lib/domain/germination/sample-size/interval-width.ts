/*
 * How wide the interval of a test not yet made will be. Half of its whole width is used, lower to upper, because the
 * interval is not centred on the germination found.
 */
import { binomialLogPmf } from '../../statistics/binomial';
import { binomialInterval, type IntervalMethod } from '../../statistics/binomial-interval';
import { requireProportion } from '../../statistics/require-proportion';
import { requireSeeds } from './require-seeds';

export interface WidthQuestion {
  /** germination expected of the lot, proportion in [0, 1] */
  germination: number;
  /** level of the interval, in (0, 1): 0.95, not 95 */
  level: number;
  method: IntervalMethod;
  /**
   * 'expected': the mean half-width over all counts that a lot of this germination may give;
   * 'widest': the half-width in the worst case, whatever germinates, so that no guess of germination is needed
   */
  basis: WidthBasis;
}

export const WIDTH_BASES = ['expected', 'widest'] as const;
export type WidthBasis = (typeof WIDTH_BASES)[number];

/** Counts rarer than this, both sides together, cannot move the mean half-width in the ninth digit. */
const NEGLIGIBLE_LOG_CHANCE = Math.log(1e-16);

/**
 * Half-width of the interval that a test of `seeds` seeds is going to give.
 *
 * @param seeds     seeds to be set, integer >= 1
 * @param question  see WidthQuestion
 * @returns half of upper - lower, proportion in (0, 0.5]; relative error below 1e-9
 * @throws RangeError when an argument is outside its range
 * Checked against R (sum over `dbinom` of intervals by `qbeta` and by the Wilson formula): tests/golden/seeds-for-width.json
 */
export function intervalHalfWidth(seeds: number, question: WidthQuestion): number {
  requireSeeds('intervalHalfWidth', 'seeds', seeds, 1);
  requireProportion('intervalHalfWidth', 'germination', question.germination);
  const halfWidth = (successes: number) => {
    const { lower, upper } = binomialInterval({
      successes,
      trials: seeds,
      level: question.level,
      method: question.method,
    });
    return (upper - lower) / 2;
  };
  // All three methods are symmetric in germinated and not, and widest in the middle (or beside it, for odd numbers).
  if (question.basis === 'widest') return halfWidth(Math.floor(seeds / 2));
  return meanOverCounts(seeds, question.germination, halfWidth);
}

/** The sum runs outwards from the likeliest count and ends where the terms no longer matter: 400 of 40 000, not all. */
function meanOverCounts(seeds: number, germination: number, value: (germinated: number) => number): number {
  const likeliest = Math.min(seeds, Math.floor((seeds + 1) * germination));
  let sum = 0;
  const add = (successes: number): boolean => {
    const logChance = binomialLogPmf({ successes, trials: seeds, probability: germination });
    if (logChance < NEGLIGIBLE_LOG_CHANCE) return false;
    sum += Math.exp(logChance) * value(successes);
    return true;
  };
  for (let successes = likeliest; successes >= 0 && add(successes); successes--);
  for (let successes = likeliest + 1; successes <= seeds && add(successes); successes++);
  return sum;
}
