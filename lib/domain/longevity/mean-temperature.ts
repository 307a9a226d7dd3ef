/** The mean temperature of a store over some days, with the target where nothing was logged. */
import { integralBetween, integrateOverReadings, type RunningIntegral } from './running-integral';
import type { StoreClimate } from './store-climate';

/** Added before summing: a running integral takes no negative rates. */
const KELVIN = 273.15;

const kelvinDays = new WeakMap<StoreClimate, RunningIntegral>();

/**
 * @param climate  from `storeClimate`
 * @param fromDay  days since 1970-01-01 UTC, whole
 * @param toDay    days since 1970-01-01 UTC, whole, > fromDay
 * @returns degrees C: between readings temperature runs straight
 * @throws RangeError when a day is not whole or there is no day between them
 * Checked in tests/domain/longevity/mean-temperature.test.ts
 */
export function meanTemperatureC(climate: StoreClimate, fromDay: number, toDay: number): number {
  if (!(toDay > fromDay)) {
    throw new RangeError(`meanTemperatureC: toDay must be after fromDay, got ${fromDay} to ${toDay}`);
  }
  let integral = kelvinDays.get(climate);
  if (!integral) {
    const { temperatureC } = climate.readings;
    integral = integrateOverReadings(
      climate,
      climate.target.temperatureC + KELVIN,
      (i) => (temperatureC[i] as number) + KELVIN,
    );
    kelvinDays.set(climate, integral);
  }
  return integralBetween(integral, fromDay, toDay) / (toDay - fromDay) - KELVIN;
}
