/**
 * The line: the viability below which a lot should be grown again. Seed that has fallen further gives plants that are
 * fewer, weaker and no longer a fair sample of the variety.
 */

/** How a bank or crop draws its line. Fractions and germination are 0-1. */
export type ThresholdRule =
  | { kind: 'fraction-of-initial'; fraction: number }
  | { kind: 'absolute'; germination: number };

/** 85 % of the initial viability: the genebank standard (FAO 4.3.4 from memory; manual of 2006, Table 8.2, published). */
export const STANDARD_THRESHOLD: ThresholdRule = { kind: 'fraction-of-initial', fraction: 0.85 };

/** 0.85 x 90 should be 76.5 and round up; in binary a product may fall a hair short of the half. */
const HALF_SLACK = 1e-9;

/**
 * The viability at which a lot is due for regrowing.
 *
 * @param rule              a fraction of the lot's initial viability, in (0, 1]; or a germination, in (0, 1)
 * @param initialViability  of this lot when it was new, proportion in (0, 1]; only the first kind uses it
 * @returns viability, proportion in (0, 1)
 * @throws RangeError when an argument is outside its range
 * @see genebank manual of 2006, Table 8.2 (published; every row is 0.85 x initial, rounded half up)
 * Checked in tests/domain/regrow/threshold.test.ts against all 16 rows of that table
 */
export function lotThreshold({ rule, initialViability }: { rule: ThresholdRule; initialViability: number }): number {
  if (rule.kind === 'absolute') {
    if (!(rule.germination > 0 && rule.germination < 1)) {
      throw new RangeError(`lotThreshold: germination must be in (0, 1), got ${rule.germination}`);
    }
    return rule.germination;
  }
  if (!(rule.fraction > 0 && rule.fraction <= 1)) {
    throw new RangeError(`lotThreshold: fraction must be in (0, 1], got ${rule.fraction}`);
  }
  if (!(initialViability > 0 && initialViability <= 1)) {
    throw new RangeError(`lotThreshold: initialViability must be in (0, 1], got ${initialViability}`);
  }
  return rule.fraction * initialViability;
}

/**
 * A threshold as the whole percent to show: rounded half up, as the published table does.
 *
 * @param threshold  proportion in [0, 1]
 * @returns whole percent, 0 to 100
 * @throws RangeError when the threshold is outside [0, 1]
 * Checked in tests/domain/regrow/threshold.test.ts
 */
export function thresholdPercent(threshold: number): number {
  if (!(threshold >= 0 && threshold <= 1)) {
    throw new RangeError(`thresholdPercent: threshold must be in [0, 1], got ${threshold}`);
  }
  return Math.floor(threshold * 100 + 0.5 + HALF_SLACK);
}
