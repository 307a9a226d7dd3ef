/*
 * The upper tail of the gamma distribution. The library's incomplete gamma function serves up to a shape of 500; from some 800 on it
 * is wrong by up to 4 % (version 0.3.1), so that beyond 500 the classical series and continued fraction stand here.
 * See docs/decisions/015-large-gamma-shapes.md.
 */
import gammainc from '@stdlib/math-base-special-gammainc';
import gammaln from '@stdlib/math-base-special-gammaln';

const LIBRARY_SERVES_TO = 500;
/** Relative; both expansions stop when a further term is smaller. */
const PRECISION = 1e-16;
/** Enough for shapes up to a thousand million: some 10 sqrt(shape) terms are needed near the mean. */
const MOST_TERMS = 1_000_000;
const TINY = 1e-300;

/**
 * Probability that a gamma variable of rate 1 exceeds a value.
 *
 * @param value  >= 0
 * @param shape  > 0, finite
 * @returns probability in [0, 1]; relative error below 1e-11 up to a shape of 500, 1e-9 up to 100 000
 * @throws RangeError when an argument is outside its range
 * @see Abramowitz & Stegun 1964, 6.5.29 and 6.5.31 (from memory), the fraction by Lentz's method
 * Checked against R `pgamma(lower.tail = FALSE)`: tests/golden/gamma-tail.json
 */
export function gammaUpperTail(value: number, shape: number): number {
  if (!(value >= 0)) throw new RangeError(`gammaUpperTail: value must be at least 0, got ${value}`);
  if (!(shape > 0 && Number.isFinite(shape))) {
    throw new RangeError(`gammaUpperTail: shape must be above 0 and finite, got ${shape}`);
  }
  if (value === 0) return 1;
  if (value === Number.POSITIVE_INFINITY) return 0;
  if (shape <= LIBRARY_SERVES_TO) return gammainc(value, shape, true, true);
  // value^shape e^-value / Gamma(shape), about shape * (log1p(u) - u) so that large terms do not cancel.
  const excess = (value - shape) / shape;
  const scale = shape * (Math.log1p(excess) - excess) + shape * Math.log(shape) - shape - gammaln(shape);
  return value < shape + 1
    ? 1 - Math.exp(scale) * lowerSeries(value, shape)
    : Math.exp(scale) * upperFraction(value, shape);
}

/** Sum of value^n / (shape (shape + 1) ... (shape + n)). */
function lowerSeries(value: number, shape: number): number {
  let term = 1 / shape;
  let sum = term;
  for (let n = 1; n < MOST_TERMS && term > PRECISION * sum; n += 1) {
    term *= value / (shape + n);
    sum += term;
  }
  return sum;
}

/** 1 / (value + 1 - shape - 1 (1 - shape) / (value + 3 - shape - ...)), from the front. */
function upperFraction(value: number, shape: number): number {
  let denominator = value + 1 - shape;
  let front = 1 / TINY;
  let back = 1 / denominator;
  let fraction = back;
  for (let n = 1; n < MOST_TERMS; n += 1) {
    const numerator = -n * (n - shape);
    denominator += 2;
    back = 1 / awayFromZero(numerator * back + denominator);
    front = awayFromZero(denominator + numerator / front);
    const change = front * back;
    fraction *= change;
    if (Math.abs(change - 1) < PRECISION * 4) break;
  }
  return fraction;
}

const awayFromZero = (value: number): number => (Math.abs(value) < TINY ? TINY : value);
