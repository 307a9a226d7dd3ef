/**
 * The logarithm of the standard normal distribution function, from a table: the lot model needs it hundreds of times
 * per lot, and the exact function is some thirty times slower.
 *
 * Between knots 1/64 apart, from -12 to 12, a cubic matches the value and the slope at both ends; its error there is
 * below 1e-10 absolute. Below -12 an asymptotic series takes over (relative error below 2e-12), above 12 the answer is
 * 0 to within 2e-33. The slope, density / distribution function, is also what a binomial score is made of.
 */
import { normalDensity, normalLogCdf } from '../statistics/normal-distribution';

/** Where the table begins and, with the other sign, ends: probits. */
export const LOG_CDF_FROM = -12;
export const LOG_CDF_KNOTS_PER_PROBIT = 64;
/** Index of the last knot. The knots lie evenly about 0, so that the knot of -x is this minus the knot of x. */
export const LOG_CDF_LAST_KNOT = 24 * LOG_CDF_KNOTS_PER_PROBIT;

/** log Phi and its slope at the knots: read by those who walk along many points at once. Not to be written to. */
export const logCdfAtKnot = new Float64Array(LOG_CDF_LAST_KNOT + 1);
export const logCdfSlopeAtKnot = new Float64Array(LOG_CDF_LAST_KNOT + 1);
for (let i = 0; i <= LOG_CDF_LAST_KNOT; i += 1) {
  const x = LOG_CDF_FROM + i / LOG_CDF_KNOTS_PER_PROBIT;
  const logCdf = normalLogCdf(x);
  logCdfAtKnot[i] = logCdf;
  logCdfSlopeAtKnot[i] = normalDensity(x) / Math.exp(logCdf);
}

/**
 * log Phi(x).
 *
 * @param x  probits, finite
 * @returns a number <= 0; absolute error below 1e-10 for x >= -12, relative below 2e-12 under that
 * Checked against `normalLogCdf` (itself checked against R): tests/domain/longevity/fast-log-cdf.test.ts
 */
export function fastLogCdf(x: number): number {
  if (x >= 12) return 0;
  if (x < LOG_CDF_FROM) return logCdfFarBelow(x);
  const position = (x - LOG_CDF_FROM) * LOG_CDF_KNOTS_PER_PROBIT;
  const i = Math.min(position | 0, LOG_CDF_LAST_KNOT - 1);
  const t = position - i;
  const y0 = logCdfAtKnot[i] as number;
  const y1 = logCdfAtKnot[i + 1] as number;
  const d0 = (logCdfSlopeAtKnot[i] as number) / LOG_CDF_KNOTS_PER_PROBIT;
  const d1 = (logCdfSlopeAtKnot[i + 1] as number) / LOG_CDF_KNOTS_PER_PROBIT;
  const rise = y1 - y0;
  return y0 + t * (d0 + t * (3 * rise - 2 * d0 - d1 + t * (d0 + d1 - 2 * rise)));
}

/**
 * The slope of log Phi at x: normal density divided by the distribution function.
 *
 * @param x  probits, finite
 * @returns a number >= 0; absolute error below 1e-7
 * Checked against `normalDensity / normalCdf` in tests/domain/longevity/fast-log-cdf.test.ts
 */
export function fastLogCdfSlope(x: number): number {
  if (x >= 12) return 0;
  if (x < LOG_CDF_FROM) return slopeFarBelow(x);
  const position = (x - LOG_CDF_FROM) * LOG_CDF_KNOTS_PER_PROBIT;
  const i = Math.min(position | 0, LOG_CDF_LAST_KNOT - 1);
  const t = position - i;
  const rise = ((logCdfAtKnot[i + 1] as number) - (logCdfAtKnot[i] as number)) * LOG_CDF_KNOTS_PER_PROBIT;
  const d0 = logCdfSlopeAtKnot[i] as number;
  const d1 = logCdfSlopeAtKnot[i + 1] as number;
  return d0 + t * (2 * (3 * rise - 2 * d0 - d1) + 3 * t * (d0 + d1 - 2 * rise));
}

// Phi(x) = density(x) / -x * (1 - 1/x^2 + 3/x^4 - 15/x^6 + 105/x^8 ...); at -12 the next term is 1e-8 of 1e-8.
const LOG_SQRT_TWO_PI = 0.5 * Math.log(2 * Math.PI);
function correctionFarBelow(x: number): number {
  const q = 1 / (x * x);
  return -q * (1 - q * (3 - q * (15 - q * (105 - q * (945 - q * 10_395)))));
}
function logCdfFarBelow(x: number): number {
  return -0.5 * x * x - Math.log(-x) - LOG_SQRT_TWO_PI + Math.log1p(correctionFarBelow(x));
}
function slopeFarBelow(x: number): number {
  return -x / (1 + correctionFarBelow(x));
}
