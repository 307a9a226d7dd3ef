/**
 * The upper tail of a binomial as a function of the chance of success, for many chances and one pair of counts: what the
 * counts alone decide is reckoned once, and the continued fraction of the incomplete beta function runs in a plain loop.
 *
 * The factor before the fraction is a binomial density, taken from Stirling errors and deviances (Loader 2000) because
 * logarithms of gamma functions of millions would cancel to few digits.
 */
import gammaln from '@stdlib/math-base-special-gammaln';

const TWO_PI = 2 * Math.PI;
const LOG_SQRT_TWO_PI = 0.5 * Math.log(TWO_PI);
const STIRLING_FROM = 15; // the series below is good to 1e-15 from here
const FRACTION_TOLERANCE = 1e-14;
const MOST_FRACTION_STEPS = 200_000;
/** exp(-40) is 4e-18: a tail bounded by it adds nothing to a double near 1, so its evaluation is saved. */
const NEGLIGIBLE_EXPONENT = 40;

/**
 * P(Bin(trials, chance) >= successes) as a function of the chance. Checks nothing: the searches call it for thousands of
 * lots.
 *
 * @param successes  integer >= 1
 * @param trials     >= successes; need not be whole
 * @returns function of the chance (0-1), with values in [0, 1]; absolute error below 1e-12
 * @see DiDonato & Morris (1992), ACM Trans. Math. Softw. 18:360-373 (continued fraction; from memory); Loader (2000),
 *      Fast and accurate computation of binomial probabilities (from memory)
 * Checked against R `pbinom`: tests/golden/seeds-to-sow.json
 */
export function binomialTailCurve(successes: number, trials: number): (chance: number) => number {
  const a = successes;
  const b = trials - successes + 1;
  const sum = a + b;
  const logFactor = stirlingError(sum) - stirlingError(a) - stirlingError(b) + 0.5 * Math.log((a * b) / (sum * TWO_PI));
  const turn = (a + 1) / (sum + 2);
  return (chance) => {
    if (chance <= 0) return 0;
    if (chance >= 1) return 1;
    // Chernoff's bounds on either tail (the Poisson ones, which also hold for the binomial).
    const gap = trials * chance - successes;
    if (gap > 0 && (gap + 1) ** 2 > 2 * NEGLIGIBLE_EXPONENT * trials * chance) return 1;
    if (gap < 0 && gap * gap > NEGLIGIBLE_EXPONENT * (trials * chance + successes)) return 0;
    const other = 1 - chance;
    const factor = Math.exp(logFactor - deviance(a, sum * chance) - deviance(b, sum * other));
    // The fraction converges fast on the near side of the mean; beyond it the other tail is taken.
    return chance < turn
      ? factor / continuedFraction(a, b, chance, other)
      : 1 - factor / continuedFraction(b, a, other, chance);
  };
}

/** log k! less Stirling's formula, k > 0. */
function stirlingError(k: number): number {
  if (k < STIRLING_FROM) return gammaln(k + 1) - (k + 0.5) * Math.log(k) + k - LOG_SQRT_TWO_PI;
  const square = k * k;
  return (1 / 12 - (1 / 360 - (1 / 1260 - (1 / 1680 - 1 / (1188 * square)) / square) / square) / square) / k;
}

/** x log(x / expected) + expected - x, without its cancellation where the two are close. */
function deviance(x: number, expected: number): number {
  const excess = (expected - x) / x;
  return x * (excess - Math.log1p(excess));
}

/** Of the incomplete beta function at x = 1 - y, at or below its mean: there all terms are positive and nothing cancels. */
function continuedFraction(a: number, b: number, x: number, y: number): number {
  const start = a * y - b * x + 1;
  let inverse = 1 / (a + 1);
  let value = a * start * inverse;
  // Numerator and denominator of the step before, scaled so that this step's denominator is 1.
  let numerator = 1;
  let denominator = 0;
  for (let m = 1; m < MOST_FRACTION_STEPS; m += 1) {
    const mixed = m * (b - m) * x * inverse;
    const top = (a + m - 1) * (a + b + m - 1) * x * inverse * mixed;
    inverse = 1 / (a + 2 * m + 1);
    const bottom = m + mixed + (a + m) * (start + m * (1 + y)) * inverse;
    const scale = 1 / (bottom + top * denominator);
    const next = (bottom * value + top * numerator) * scale;
    numerator = value * scale;
    denominator = scale;
    if (Math.abs(next - value) <= FRACTION_TOLERANCE * Math.abs(next)) return next;
    value = next;
  }
  return value;
}
