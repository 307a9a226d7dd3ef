/*
 * How far a germination figure can be trusted: an interval for a proportion from a count.
 *
 * Assumes that the seeds are independent and alike. Three methods: Wilson is the one screens show (close to its level
 * on average, never outside 0-1, sensible at 0 and at all); exact (Clopper-Pearson) never covers less than its level
 * and is wider; Jeffreys is the equal-tailed Bayesian interval under a Beta(1/2, 1/2) prior.
 */
import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import { requireCounts } from './require-counts';
import { wilsonBounds } from './wilson-bounds';

export type IntervalMethod = 'wilson' | 'exact' | 'jeffreys';

export interface Interval {
  /** proportion in [0, 1] */
  lower: number;
  /** proportion in [0, 1] */
  upper: number;
  /** probability in (0, 1): 0.95, not 95 */
  level: number;
  method: IntervalMethod;
}

export interface BinomialIntervalInput {
  /** count, integer, 0 <= successes <= trials */
  successes: number;
  /** count, integer, >= 1 */
  trials: number;
  /** probability in (0, 1): 0.95, not 95 */
  level?: number;
  method?: IntervalMethod;
}

/**
 * Two-sided interval for a binomial proportion.
 *
 * With 0 successes the lower bound is exactly 0 and with all successes the upper bound is exactly 1, for every method.
 * For Jeffreys that is the usual convention (Brown, Cai & DasGupta 2001): the plain quantile would shut out the
 * observed proportion itself.
 *
 * @param input  see BinomialIntervalInput; level defaults to 0.95, method to 'wilson'
 * @returns bounds as proportions in [0, 1], with the level and method that made them; relative error below 1e-12
 * @throws RangeError when a count is not an integer in its range, the level is outside (0, 1) or the method unknown
 * @see Wilson (1927), J. Am. Stat. Assoc. 22:209-212; Clopper & Pearson (1934), Biometrika 26:404-413;
 *      Brown, Cai & DasGupta (2001), Statistical Science 16:101-133, doi:10.1214/ss/1009213286
 * Checked against R `prop.test(correct = FALSE)`, `binom.test` and `qbeta`: tests/golden/binomial-interval.json
 */
export function binomialInterval({
  successes,
  trials,
  level = 0.95,
  method = 'wilson',
}: BinomialIntervalInput): Interval {
  requireCounts('binomialInterval', successes, trials);
  if (trials < 1) throw new RangeError(`binomialInterval: trials must be at least 1, got ${trials}`);
  if (!(level > 0 && level < 1)) {
    throw new RangeError(`binomialInterval: level must be a probability in (0, 1), got ${level}`);
  }
  const failures = trials - successes;
  const tail = (1 - level) / 2;
  const [lower, upper] = boundsBy(method, successes, failures, tail);
  return { lower: successes === 0 ? 0 : lower, upper: failures === 0 ? 1 : upper, level, method };
}

function boundsBy(method: IntervalMethod, successes: number, failures: number, tail: number): [number, number] {
  switch (method) {
    case 'wilson':
      return wilsonBounds(successes, failures, tail);
    case 'exact':
      return [
        successes === 0 ? 0 : betaQuantile(tail, successes, failures + 1),
        failures === 0 ? 1 : betaQuantile(1 - tail, successes + 1, failures),
      ];
    case 'jeffreys':
      return [
        betaQuantile(tail, successes + 0.5, failures + 0.5),
        betaQuantile(1 - tail, successes + 0.5, failures + 0.5),
      ];
    default:
      throw new RangeError(`binomialInterval: method must be wilson, exact or jeffreys, got ${String(method)}`);
  }
}
