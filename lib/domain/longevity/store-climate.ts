/**
 * A store's climate: its logged readings, and the target that stands in where nothing was logged.
 *
 * The target holds before the first reading, after the last, and through any gap longer than
 * `maximumGapHours`: a logger that was out for a week says nothing about that week. Shorter gaps are bridged
 * from reading to reading. What was assumed is counted, so that a forecast can say how much of it was measured.
 */
import { SECONDS_PER_DAY, STANDARD_GAP_HOURS } from './store-day';

export type StoreReadings = {
  /** seconds since 1970-01-01 UTC, strictly ascending */
  epochSeconds: Float64Array;
  /** degrees C, one for each time, -90 to 100 */
  temperatureC: Float64Array;
  /** 0 to 1, one for each time; NaN where the humidity was not read */
  relativeHumidity?: Float64Array;
};

export type StoreTarget = {
  /** degrees C, -90 to 100 */
  temperatureC: number;
  /** 0 to 1; leave out when the store has no humidity target */
  relativeHumidity?: number;
};

export type StoreClimate = {
  readings: StoreReadings;
  target: StoreTarget;
  maximumGapHours: number;
  /** the UTC day (days since 1970-01-01) of the first reading; 0 with no readings */
  firstDay: number;
  /** the day after that of the last reading; equal to firstDay with no readings */
  endDay: number;
  /** stretches between two readings that are longer than the maximum gap */
  gaps: { fromEpochSeconds: number; toEpochSeconds: number; days: number }[];
};

/**
 * Checks a store's readings and finds their gaps.
 *
 * @param readings         logged climate in time order; empty arrays for a store without a logger
 * @param target           what the store is set to
 * @param maximumGapHours  longest gap to bridge, hours, > 0; default 48
 * @returns the climate, from which ageing is reckoned
 * @throws RangeError when lengths differ, times do not ascend, or a value is outside its range
 * Checked in tests/domain/longevity/store-climate.test.ts
 */
export function storeClimate(
  readings: StoreReadings,
  target: StoreTarget,
  { maximumGapHours = STANDARD_GAP_HOURS }: { maximumGapHours?: number } = {},
): StoreClimate {
  if (!(maximumGapHours > 0)) {
    throw new RangeError(`storeClimate: maximumGapHours must be above 0, got ${maximumGapHours}`);
  }
  requireTemperature(target.temperatureC, 'target');
  if (target.relativeHumidity !== undefined) requireHumidity(target.relativeHumidity, 'target');
  const { epochSeconds, temperatureC, relativeHumidity } = readings;
  const count = epochSeconds.length;
  if (temperatureC.length !== count || (relativeHumidity && relativeHumidity.length !== count)) {
    throw new RangeError(
      `storeClimate: one temperature (and humidity) per time is needed, got ${count} times, ${temperatureC.length} temperatures, ${relativeHumidity?.length ?? 'no'} humidities`,
    );
  }
  const gaps: StoreClimate['gaps'] = [];
  const longestGapSeconds = maximumGapHours * 3600;
  for (let i = 0; i < count; i += 1) {
    const time = epochSeconds[i] as number;
    if (!Number.isFinite(time)) throw new RangeError(`storeClimate: reading ${i} has no time, got ${time}`);
    requireTemperature(temperatureC[i] as number, `reading ${i}`);
    if (relativeHumidity && !Number.isNaN(relativeHumidity[i])) {
      requireHumidity(relativeHumidity[i] as number, `reading ${i}`);
    }
    if (i === 0) continue;
    const before = epochSeconds[i - 1] as number;
    if (!(time > before)) throw new RangeError(`storeClimate: times must ascend, got ${before} then ${time}`);
    if (time - before > longestGapSeconds) {
      gaps.push({ fromEpochSeconds: before, toEpochSeconds: time, days: (time - before) / SECONDS_PER_DAY });
    }
  }
  const firstDay = count === 0 ? 0 : Math.floor((epochSeconds[0] as number) / SECONDS_PER_DAY);
  const endDay = count === 0 ? 0 : Math.floor((epochSeconds[count - 1] as number) / SECONDS_PER_DAY) + 1;
  return { readings, target, maximumGapHours, firstDay, endDay, gaps };
}

function requireTemperature(value: number, where: string): void {
  if (!(value >= -90 && value <= 100)) {
    throw new RangeError(`storeClimate: temperatureC must be between -90 and 100, got ${value} (${where})`);
  }
}

function requireHumidity(value: number, where: string): void {
  if (!(value >= 0 && value <= 1)) {
    throw new RangeError(`storeClimate: relativeHumidity must be between 0 and 1, got ${value} (${where})`);
  }
}
