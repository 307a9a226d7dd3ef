import { requireProportion } from '../../statistics/require-proportion';
import { wilsonBounds } from '../../statistics/wilson-bounds';

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
  requireProportion('wilsonForShare', 'share', share);
  if (!(seeds > 0 && seeds < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`wilsonForShare: seeds must be above 0, got ${seeds}`);
  }
  requireProportion('wilsonForShare', 'level', level, true);
  const [lower, upper] = wilsonBounds(share * seeds, (1 - share) * seeds, (1 - level) / 2);
  // At the ends exactly, whatever the rounding of an effective number.
  return { lower: share === 0 ? 0 : lower, upper: share === 1 ? 1 : upper };
}
