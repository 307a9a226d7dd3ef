/** How the store climate divides time: whole UTC days, counted from 1970-01-01 (day 0). */

export const SECONDS_PER_DAY = 86_400;

/** A gap between two readings longer than this is filled with the store's target, hours. Our own choice. */
export const STANDARD_GAP_HOURS = 48;

/**
 * Refuses a stretch of days that cannot be.
 *
 * @param caller   the function that asks, for the message
 * @param fromDay  days since 1970-01-01 UTC, whole
 * @param toDay    days since 1970-01-01 UTC, whole, >= fromDay
 * @throws RangeError when either is not a whole number or the stretch runs backwards
 * Checked through `ageingBetween` in tests/domain/longevity/running-integral.test.ts
 */
export function requireDayRange(caller: string, fromDay: number, toDay: number): void {
  if (!Number.isInteger(fromDay)) throw new RangeError(`${caller}: fromDay must be a whole day, got ${fromDay}`);
  if (!Number.isInteger(toDay)) throw new RangeError(`${caller}: toDay must be a whole day, got ${toDay}`);
  if (toDay < fromDay) throw new RangeError(`${caller}: toDay must not be before fromDay, got ${fromDay} to ${toDay}`);
}
