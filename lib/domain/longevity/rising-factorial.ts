/**
 * log of the rising factorial, log Gamma(a + n) - log Gamma(a), and its slope in a: what a beta-binomial likelihood is
 * made of. Written here as a pair because both come out of the same Stirling series, and the digamma function is not
 * among our packages.
 */

const STIRLING_FROM = 9; // the series below is good to 1e-12 from here; smaller arguments are stepped up to it

/** log Gamma(x) and its slope, in out[0] and out[1]; x > 0. */
function logGammaAndSlope(x: number, out: Float64Array): void {
  let shifted = x;
  let product = 1;
  let sum = 0;
  while (shifted < STIRLING_FROM) {
    product *= shifted;
    sum += 1 / shifted;
    shifted += 1;
  }
  const inverse = 1 / shifted;
  const square = inverse * inverse;
  const logShifted = Math.log(shifted);
  out[0] =
    (shifted - 0.5) * logShifted -
    shifted +
    0.918_938_533_204_672_8 +
    inverse * (1 / 12 - square * (1 / 360 - square * (1 / 1260 - square * (1 / 1680 - square / 1188)))) -
    Math.log(product);
  out[1] =
    logShifted -
    0.5 * inverse -
    square * (1 / 12 - square * (1 / 120 - square * (1 / 252 - square * (1 / 240 - square / 132)))) -
    sum;
}

const upper = new Float64Array(2);
const lower = new Float64Array(2);

/**
 * log Gamma(a + count) - log Gamma(a + 1), and its slope in a. The factor a itself is left out: as a goes to 0 its
 * logarithm runs away, and the caller knows that logarithm exactly from elsewhere.
 *
 * @param a      > 0
 * @param count  whole, >= 1
 * @param out    receives the logarithm in out[0] and the slope in out[1]
 * @throws nothing; the caller has checked the arguments
 * Checked against the plain sum of logarithms in tests/domain/longevity/rising-factorial.test.ts
 */
export function logRisingFactorialAboveFirst(a: number, count: number, out: Float64Array): void {
  logGammaAndSlope(a + count, upper);
  logGammaAndSlope(a + 1, lower);
  out[0] = (upper[0] as number) - (lower[0] as number);
  out[1] = (upper[1] as number) - (lower[1] as number);
}
