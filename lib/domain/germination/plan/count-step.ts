/*
 * How often a tray is looked at between its first and its final count.
 */

/** Longest that seedlings are left between counts: after that they tangle and mould spreads. Our own choice. */
const LONGEST_DAYS = 5;

/**
 * Days between counts, so that they are evenly spread and no more than five days apart.
 *
 * @param firstCountDays  day of the first count, integer >= 0
 * @param finalCountDays  day of the final count, integer >= firstCountDays
 * @returns days, integer >= 1; null where the first and the final count are enough
 * @throws RangeError when the days are no whole numbers in order
 * Checked in tests/domain/germination/plan/count-step.test.ts
 */
export function countStep(firstCountDays: number, finalCountDays: number): number | null {
  const span = finalCountDays - firstCountDays;
  if (!Number.isInteger(firstCountDays) || !Number.isInteger(finalCountDays) || firstCountDays < 0 || span < 0) {
    throw new RangeError(
      `countStep: days must be whole and in order, got firstCountDays ${firstCountDays}, finalCountDays ${finalCountDays}`,
    );
  }
  return span <= LONGEST_DAYS ? null : Math.ceil(span / Math.ceil(span / LONGEST_DAYS));
}

/**
 * How many days of counting a test has, counted as `countStep` proposes.
 *
 * @param firstCountDays  day of the first count, integer >= 0
 * @param finalCountDays  day of the final count, integer >= firstCountDays
 * @returns integer >= 1
 * @throws RangeError as countStep
 * Checked against countDays: tests/domain/germination/plan/count-step.test.ts
 */
export function countsInTest(firstCountDays: number, finalCountDays: number): number {
  const span = finalCountDays - firstCountDays;
  const step = countStep(firstCountDays, finalCountDays) ?? span;
  return span === 0 ? 1 : 1 + Math.ceil(span / step);
}
