import { normalQuantile } from './normal-distribution';

/**
 * The two bounds of Wilson's interval, for counts that need not be whole: alike seeds count as fewer.
 *
 * The bounds are the two roots of (1 + z^2/n) p^2 - (2 phat + z^2/n) p + phat^2 = 0. The upper root is a sum of positive
 * terms; the lower one comes from the product of the roots, because the textbook difference loses every digit when few
 * of many seeds succeed.
 *
 * @param successes  seeds that count, >= 0
 * @param failures   seeds that do not, >= 0; the two together above 0
 * @param tail       chance outside on each side, in (0, 0.5): 0.025 for a level of 0.95
 * @returns lower and upper bound, proportions in [0, 1]
 * @throws nothing; the caller has checked the arguments
 * @see Wilson (1927), J. Am. Stat. Assoc. 22:209-212 (from memory)
 * Checked through `binomialInterval` against R: tests/golden/binomial-interval.json
 */
export function wilsonBounds(successes: number, failures: number, tail: number): [number, number] {
  const trials = successes + failures;
  const z = -normalQuantile(tail);
  const zSquared = z * z;
  const halfWidth = z * Math.sqrt((successes * failures) / trials + zSquared / 4);
  const scaledUpper = successes + zSquared / 2 + halfWidth;
  return [(successes * successes) / (trials * scaledUpper), scaledUpper / (trials + zSquared)];
}
