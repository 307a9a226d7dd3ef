/*
 * The standard normal distribution (mean 0, standard deviation 1), accurate in both tails.
 *
 * Seed ageing is counted in probits, so these five functions stand under every forecast. A tail is always computed
 * as itself, never as one minus the other tail: 1 - 0.9999999999999999 keeps one digit, and at 1 - 1 nothing is left.
 * Everything rests on the complementary error function, erfc, which keeps its relative accuracy down to 1e-308.
 */
import erfc from '@stdlib/math-base-special-erfc';
import erfcinv from '@stdlib/math-base-special-erfcinv';
import logcdf from '@stdlib/stats-base-dists-normal-logcdf';

const LOG_SQRT_TWO_PI = 0.5 * Math.log(2 * Math.PI);

/**
 * Probability that a standard normal value is at most x (the lower tail). `normalCdf(probit)` is a viability.
 *
 * @param x  probits, any real number or +-Infinity
 * @returns probability in [0, 1]; relative error below 1e-12 down to x = -37.5 (1e-307), 0 below about -38.5
 * @throws RangeError when x is NaN
 * Checked against R `pnorm`: tests/golden/normal-distribution.json
 */
export function normalCdf(x: number): number {
  refuseNotANumber('normalCdf', 'x', x);
  return 0.5 * erfc(-x * Math.SQRT1_2);
}

/**
 * Probability that a standard normal value is above x (the upper tail), without the loss of digits in `1 - normalCdf(x)`.
 *
 * @param x  probits, any real number or +-Infinity
 * @returns probability in [0, 1]; relative error below 1e-12 up to x = 37.5
 * @throws RangeError when x is NaN
 * Checked against R `pnorm(lower.tail = FALSE)`: tests/golden/normal-distribution.json
 */
export function normalUpperTail(x: number): number {
  refuseNotANumber('normalUpperTail', 'x', x);
  return 0.5 * erfc(x * Math.SQRT1_2);
}

/**
 * Natural logarithm of `normalCdf(x)`, finite far beyond the point where the probability itself underflows to 0.
 * The logarithm of the upper tail is `normalLogCdf(-x)`.
 *
 * @param x  probits, any real number or +-Infinity
 * @returns a number <= 0; -Infinity only at x = -Infinity or where x * x overflows
 * @throws RangeError when x is NaN
 * Checked against R `pnorm(log.p = TRUE)`: tests/golden/normal-distribution.json
 */
export function normalLogCdf(x: number): number {
  refuseNotANumber('normalLogCdf', 'x', x);
  if (x === Number.POSITIVE_INFINITY) return 0;
  if (x === Number.NEGATIVE_INFINITY) return Number.NEGATIVE_INFINITY;
  // Above 0 the answer is close to 0 and is one minus a small tail: log1p keeps the tail's own digits.
  if (x > 0) return Math.log1p(-0.5 * erfc(x * Math.SQRT1_2));
  return logcdf(x, 0, 1);
}

/**
 * The standard normal value below which the given probability lies: the probit of a proportion.
 *
 * @param probability  in [0, 1]. For a probability very close to 1 pass the complement and change the sign: 1 - 1e-20
 *                     is 1 in a double, while normalQuantile(1e-20) is exact
 * @returns probits; -Infinity at 0, Infinity at 1; relative error below 1e-12 down to 1e-300
 * @throws RangeError when the probability is NaN or outside [0, 1]
 * Checked against R `qnorm`: tests/golden/normal-distribution.json
 */
export function normalQuantile(probability: number): number {
  if (!(probability >= 0 && probability <= 1)) {
    throw new RangeError(`normalQuantile: probability must be in [0, 1], got ${probability}`);
  }
  if (probability === 0.5) return 0; // not the -0 that the sign change below would give
  // erfcinv(y) loses digits as y nears 2, so the upper half goes by symmetry; 1 - p is exact for p in [0.5, 1].
  return probability <= 0.5 ? -Math.SQRT2 * erfcinv(2 * probability) : Math.SQRT2 * erfcinv(2 * (1 - probability));
}

/**
 * Density of the standard normal distribution.
 *
 * @param x  probits, any real number or +-Infinity
 * @returns density per probit, >= 0; relative error below 1e-12 for |x| <= 37.5
 * @throws RangeError when x is NaN
 * Checked against R `dnorm`: tests/golden/normal-distribution.json
 */
export function normalDensity(x: number): number {
  return Math.exp(normalLogDensity(x));
}

/**
 * Natural logarithm of the standard normal density: -x^2 / 2 - log(sqrt(2 pi)).
 *
 * @param x  probits, any real number or +-Infinity
 * @returns a number <= -0.918938...
 * @throws RangeError when x is NaN
 * Checked through `normalDensity` and against R `dnorm(log = TRUE)`: tests/golden/normal-distribution.json
 */
export function normalLogDensity(x: number): number {
  refuseNotANumber('normalLogDensity', 'x', x);
  return -0.5 * x * x - LOG_SQRT_TWO_PI;
}

function refuseNotANumber(functionName: string, argument: string, value: number): void {
  if (Number.isNaN(value)) throw new RangeError(`${functionName}: ${argument} must be a number, got NaN`);
}
