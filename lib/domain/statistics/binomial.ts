/*
 * The binomial distribution: how many of n alike, independent seeds germinate when each does with the same chance.
 */
import gammaln from '@stdlib/math-base-special-gammaln';
import betaCdf from '@stdlib/stats-base-dists-beta-cdf';
import { requireCounts } from './require-counts';

export interface BinomialInput {
  /** count, integer, 0 <= successes <= trials */
  successes: number;
  /** count, integer, >= 0 */
  trials: number;
  /** chance per trial, in [0, 1] */
  probability: number;
}

/**
 * Natural logarithm of the number of ways to choose `chosen` of `total`.
 *
 * @param total   count, integer, >= 0
 * @param chosen  count, integer, 0 <= chosen <= total
 * @returns a number >= 0; absolute error about 1e-16 times log(total!)
 * @throws RangeError when a count is not an integer in its range
 * Checked through the probabilities that use it: tests/golden/binomial.json
 */
export function logChoose(total: number, chosen: number): number {
  requireCounts('logChoose', chosen, total);
  if (chosen === 0 || chosen === total) return 0;
  return gammaln(total + 1) - gammaln(chosen + 1) - gammaln(total - chosen + 1);
}

/**
 * Natural logarithm of the binomial probability of exactly `successes`.
 *
 * @returns a number <= 0; -Infinity where the count is impossible (a success at chance 0, a failure at chance 1).
 *          The probability has a relative error below 1e-9 up to 100 000 trials
 * @throws RangeError when a count is not an integer in its range or the probability is outside [0, 1]
 * Checked against R `dbinom`: tests/golden/binomial.json
 */
export function binomialLogPmf({ successes, trials, probability }: BinomialInput): number {
  requireInput('binomialLogPmf', successes, trials, probability);
  const failures = trials - successes;
  // 0 * log(0) is NaN in floating point, while its meaning here is a factor of 1.
  const successTerm = successes === 0 ? 0 : successes * Math.log(probability);
  const failureTerm = failures === 0 ? 0 : failures * Math.log1p(-probability);
  return logChoose(trials, successes) + successTerm + failureTerm;
}

/**
 * Probability of at most `successes`.
 *
 * @returns probability in [0, 1]; relative error below 1e-11, also deep in the tail
 * @throws RangeError when a count is not an integer in its range or the probability is outside [0, 1]
 * Checked against R `pbinom`: tests/golden/binomial.json
 */
export function binomialLowerTail({ successes, trials, probability }: BinomialInput): number {
  requireInput('binomialLowerTail', successes, trials, probability);
  if (successes === trials || probability === 0) return 1;
  if (probability === 1) return 0;
  // 1 - probability would lose a small chance, and the power keeps it.
  if (successes === 0) return Math.exp(trials * Math.log1p(-probability));
  return betaCdf(1 - probability, trials - successes, successes + 1);
}

/**
 * Probability of at least `successes`: the count itself is included, so this and `binomialLowerTail` overlap by one term.
 *
 * @returns probability in [0, 1]; relative error below 1e-11, also deep in the tail
 * @throws RangeError when a count is not an integer in its range or the probability is outside [0, 1]
 * Checked against R `pbinom(successes - 1, lower.tail = FALSE)`: tests/golden/binomial.json
 */
export function binomialUpperTail({ successes, trials, probability }: BinomialInput): number {
  requireInput('binomialUpperTail', successes, trials, probability);
  if (successes === 0 || probability === 1) return 1;
  if (probability === 0) return 0;
  return betaCdf(probability, successes, trials - successes + 1);
}

function requireInput(functionName: string, successes: number, trials: number, probability: number): void {
  requireCounts(functionName, successes, trials);
  if (!(probability >= 0 && probability <= 1)) {
    throw new RangeError(`${functionName}: probability must be in [0, 1], got ${probability}`);
  }
}
