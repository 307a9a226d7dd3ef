import { normalQuantile } from '../../statistics/normal-distribution';

/**
 * Wilson score interval for a share that rests on an effective number of seeds, which need not be whole.
 *
 * The same roots as binomialInterval's 'wilson', written for a share; with a whole number of seeds both agree.
 *
 * @param share  0-1
 * @param seeds  effective number, > 0
 * @param level  probability in (0, 1): 0.95, not 95
 * @returns bounds in [0, 1]; exactly 0 below at share 0, exactly 1 above at share 1
 * @throws RangeError when an argument is outside its range
 * @see Wilson (1927), J. Am. Stat. Assoc. 22:209-212 (from memory)
 * Checked against binomialInterval (itself checked against R): tests/domain/germination/time-course/wilson-for-share.test.ts
 */
export function wilsonForShare({ share, seeds, level }: { share: number; seeds: number; level: number }): {
  lower: number;
  upper: number;
} {
  if (!(share >= 0 && share <= 1)) throw new RangeError(`wilsonForShare: share must be in [0, 1], got ${share}`);
  if (!(seeds > 0 && seeds < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`wilsonForShare: seeds must be above 0, got ${seeds}`);
  }
  if (!(level > 0 && level < 1)) throw new RangeError(`wilsonForShare: level must be in (0, 1), got ${level}`);
  const z = -normalQuantile((1 - level) / 2);
  const perSeed = (z * z) / seeds;
  const scaledUpper =
    share + perSeed / 2 + z * Math.sqrt((share * (1 - share)) / seeds + (z * z) / (4 * seeds * seeds));
  // The lower root from the product of both: their difference would lose the digits of a small share.
  return {
    lower: share === 0 ? 0 : (share * share) / scaledUpper,
    upper: share === 1 ? 1 : Math.min(1, scaledUpper / (1 + perSeed)),
  };
}
