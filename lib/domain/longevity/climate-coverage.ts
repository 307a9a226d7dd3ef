/** How much of a store's climate was measured, and how much was assumed to be at its target. */
import { integralBetween, integrateOverReadings, type RunningIntegral } from './running-integral';
import type { StoreClimate } from './store-climate';

const assumedOfClimate = new WeakMap<StoreClimate, RunningIntegral>();

/**
 * Days measured and days assumed between two days.
 *
 * @param climate  from `storeClimate`
 * @param fromDay  days since 1970-01-01 UTC, whole
 * @param toDay    days since 1970-01-01 UTC, whole, >= fromDay
 * @returns days within reach of readings, days filled with the target (before the first reading, after the last, in
 *          gaps longer than the maximum), and the measured share 0-1 (1 for an empty stretch: nothing was assumed)
 * @throws RangeError when a day is not whole or the stretch runs backwards
 * Checked in tests/domain/longevity/climate-coverage.test.ts
 */
export function climateCoverage(
  climate: StoreClimate,
  fromDay: number,
  toDay: number,
): { daysRead: number; daysAssumed: number; shareRead: number } {
  let assumed = assumedOfClimate.get(climate);
  if (!assumed) {
    // The integral of "1 where the target stood in" is the number of days assumed.
    assumed = integrateOverReadings(climate, 1, () => 0);
    assumedOfClimate.set(climate, assumed);
  }
  const days = toDay - fromDay;
  const daysAssumed = Math.min(days, integralBetween(assumed, fromDay, toDay));
  return { daysRead: days - daysAssumed, daysAssumed, shareRead: days === 0 ? 1 : (days - daysAssumed) / days };
}
