/*
 * The beta-binomial distribution: a binomial whose chance itself differs from dish to dish.
 *
 * Seeds of one dish share its moisture, its corner of the cabinet and its mould, so dishes differ by more than chance.
 * The intra-class correlation rho says by how much: the variance is n p (1 - p) (1 + (n - 1) rho). In the usual
 * parameters alpha = p (1 - rho) / rho and beta = (1 - p) (1 - rho) / rho.
 */
import { logChoose } from './binomial';
import { requireCounts } from './require-counts';

export interface BetaBinomialInput {
  /** count, integer, 0 <= successes <= trials */
  successes: number;
  /** count, integer, >= 0 */
  trials: number;
  /** mean chance per trial, in [0, 1] */
  mean: number;
  /** 1 - mean, given apart where the caller knows it more precisely (a mean very near 1) */
  meanComplement?: number;
  /** intra-class correlation rho, in [0, 1); 0 is the plain binomial */
  correlation: number;
}

/**
 * Natural logarithm of the beta-binomial probability of exactly `successes`.
 *
 * Computed as a product over the seeds, not through gamma functions: the gamma form divides by rho and loses all
 * digits as rho nears 0, while the product passes into the binomial without a seam. The cost grows with `trials`.
 *
 * @returns a number <= 0; -Infinity where the count is impossible. Relative error of the probability below 1e-10
 *          up to 10 000 trials
 * @throws RangeError when a count is not an integer in its range, the mean is outside [0, 1] or the correlation
 *         outside [0, 1)
 * @see Skellam (1948), J. R. Stat. Soc. B 10:257-261
 * Checked against R (`lbeta` and `dbinom`): tests/golden/beta-binomial.json
 */
export function betaBinomialLogPmf({
  successes,
  trials,
  mean,
  meanComplement = 1 - mean,
  correlation,
}: BetaBinomialInput): number {
  requireCounts('betaBinomialLogPmf', successes, trials);
  if (!(mean >= 0 && mean <= 1)) throw new RangeError(`betaBinomialLogPmf: mean must be in [0, 1], got ${mean}`);
  if (!(meanComplement >= 0 && meanComplement <= 1)) {
    throw new RangeError(`betaBinomialLogPmf: meanComplement must be in [0, 1], got ${meanComplement}`);
  }
  if (!(correlation >= 0 && correlation < 1)) {
    throw new RangeError(`betaBinomialLogPmf: correlation must be in [0, 1), got ${correlation}`);
  }
  const failures = trials - successes;
  const independent = 1 - correlation;
  return (
    logChoose(trials, successes) +
    logRisingProduct(mean * independent, correlation, successes) +
    logRisingProduct(meanComplement * independent, correlation, failures) -
    logRisingProduct(independent, correlation, trials)
  );
}

/** log of start (start + step) (start + 2 step) ... with `count` factors; 0 for no factor, -Infinity from a start at 0. */
function logRisingProduct(start: number, step: number, count: number): number {
  if (step === 0) return count === 0 ? 0 : count * Math.log(start);
  let sum = 0;
  for (let i = 0; i < count; i++) sum += Math.log(start + i * step);
  return sum;
}
