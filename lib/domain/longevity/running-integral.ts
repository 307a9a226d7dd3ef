/**
 * The running integral of an ageing rate over a store's history, kept at UTC midnights, so that the ageing
 * between any two days is a difference of two look-ups.
 *
 * Between readings the rate is taken to run straight from one to the next (the trapezoid rule, split at
 * midnights). A step rule would put a whole interval at the reading that opens it, which shifts a daily
 * warming by half an interval; with hourly readings both agree closely, with twelve-hourly ones the trapezoid
 * is far nearer. The rate, not the temperature, is interpolated: it costs one exponential per reading, and as the
 * rate is convex in temperature it errs, if at all, towards more ageing.
 */
import type { StoreClimate } from './store-climate';
import { requireDayRange, SECONDS_PER_DAY } from './store-day';

export type RunningIntegral = {
  /** days since 1970-01-01 UTC */
  firstDay: number;
  endDay: number;
  /** amount gathered from midnight of firstDay to midnight of firstDay + i; length endDay - firstDay + 1 */
  cumulative: Float64Array;
  /** amount per day before firstDay and from endDay on */
  targetRatePerDay: number;
};

/**
 * Integrates a rate over a store's readings, with the target's rate in gaps, before the first and after the last.
 *
 * @param climate           from `storeClimate`
 * @param targetRatePerDay  rate under the store's target, per day, >= 0
 * @param rateAt            rate per day at the i-th reading, >= 0
 * @returns the running integral at UTC midnights
 * @throws RangeError when a rate is negative or not finite
 * Checked against `ageingProbits` and a fine sum in tests/domain/longevity/running-integral.test.ts
 */
export function integrateOverReadings(
  climate: StoreClimate,
  targetRatePerDay: number,
  rateAt: (reading: number) => number,
): RunningIntegral {
  requireRate(targetRatePerDay);
  const { firstDay, endDay } = climate;
  const { epochSeconds } = climate.readings;
  const count = epochSeconds.length;
  const cumulative = new Float64Array(endDay - firstDay + 1);
  if (count === 0) return { firstDay, endDay, cumulative, targetRatePerDay };

  const longestGapDays = (climate.maximumGapHours * 3600) / SECONDS_PER_DAY;
  const dayOf = (reading: number) => (epochSeconds[reading] as number) / SECONDS_PER_DAY - firstDay;
  let sum = 0;
  let nextMidnight = 1; // index of the next midnight to be written
  // Adds a stretch over which the rate runs straight from `rateFrom` to `rateTo`, writing every midnight it meets.
  const add = (from: number, to: number, rateFrom: number, rateTo: number): void => {
    let start = from;
    let startRate = rateFrom;
    while (nextMidnight <= to) {
      const share = to === from ? 1 : (nextMidnight - from) / (to - from);
      const rate = rateFrom + (rateTo - rateFrom) * share;
      sum += 0.5 * (startRate + rate) * (nextMidnight - start);
      cumulative[nextMidnight] = sum;
      start = nextMidnight;
      startRate = rate;
      nextMidnight += 1;
    }
    sum += 0.5 * (startRate + rateTo) * (to - start);
  };

  let day = dayOf(0);
  let rate = requireRate(rateAt(0));
  add(0, day, targetRatePerDay, targetRatePerDay);
  for (let i = 1; i < count; i += 1) {
    const toDay = dayOf(i);
    const toRate = requireRate(rateAt(i));
    if (toDay - day > longestGapDays) add(day, toDay, targetRatePerDay, targetRatePerDay);
    else add(day, toDay, rate, toRate);
    day = toDay;
    rate = toRate;
  }
  add(day, endDay - firstDay, targetRatePerDay, targetRatePerDay);
  return { firstDay, endDay, cumulative, targetRatePerDay };
}

/**
 * The amount gathered between two midnights: two look-ups.
 *
 * @param integral  from `integrateOverReadings`
 * @param fromDay   days since 1970-01-01 UTC, whole
 * @param toDay     days since 1970-01-01 UTC, whole, >= fromDay
 * @returns the integral of the rate from midnight of fromDay to midnight of toDay, >= 0
 * @throws RangeError when a day is not whole or the stretch runs backwards
 * Checked by the additivity law in tests/domain/longevity/running-integral.test.ts
 */
export function integralBetween(integral: RunningIntegral, fromDay: number, toDay: number): number {
  requireDayRange('integralBetween', fromDay, toDay);
  return integralUpTo(integral, toDay) - integralUpTo(integral, fromDay);
}

function integralUpTo({ firstDay, endDay, cumulative, targetRatePerDay }: RunningIntegral, day: number): number {
  if (day <= firstDay) return (day - firstDay) * targetRatePerDay;
  if (day >= endDay) return (cumulative[endDay - firstDay] as number) + (day - endDay) * targetRatePerDay;
  return cumulative[day - firstDay] as number;
}

function requireRate(ratePerDay: number): number {
  if (!(ratePerDay >= 0 && Number.isFinite(ratePerDay))) {
    throw new RangeError(`integrateOverReadings: a rate must be finite and not negative, got ${ratePerDay}`);
  }
  return ratePerDay;
}
