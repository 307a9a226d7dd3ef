/**
 * The steady temperature at which sealed seed would have aged as much as it did in a store: the warm days of a store count
 * for more than its cool ones save, so it lies above the mean. Solved from the mean of 10^(CH t + CQ t^2) over the days.
 */
import { temperatureIntegral } from './hermetic-ageing';
import { integralBetween } from './running-integral';
import type { StoreClimate } from './store-climate';

/**
 * @param climate        from `storeClimate`; its target stands in where nothing was read
 * @param constants      CH per degree C and CQ per degree C squared, neither negative
 * @param fromDay        days since 1970-01-01 UTC, whole
 * @param toDay          days since 1970-01-01 UTC, whole, > fromDay
 * @returns degrees C, on the warm side of where the equation turns round; the target where seed ages alike at every temperature
 * @throws RangeError when CH or CQ is negative, a day is not whole or there is no day between them
 * Checked against a sum by the minute in tests/domain/longevity/equivalent-temperature.test.ts
 */
export function equivalentTemperatureC(
  climate: StoreClimate,
  { CH, CQ }: { CH: number; CQ: number },
  fromDay: number,
  toDay: number,
): number {
  if (!(CH >= 0 && CQ >= 0)) {
    throw new RangeError(`equivalentTemperatureC: CH and CQ must not be negative, got ${CH} and ${CQ}`);
  }
  if (!(toDay > fromDay)) {
    throw new RangeError(`equivalentTemperatureC: toDay must be after fromDay, got ${fromDay} to ${toDay}`);
  }
  if (CH === 0 && CQ === 0) return climate.target.temperatureC;
  const days = toDay - fromDay;
  const exponent = Math.log10(integralBetween(temperatureIntegral(climate, { CH, CQ }), fromDay, toDay) / days);
  // The root in the form that keeps its digits where CQ is small; rounding may put the mean a trace below the least there is.
  const slope = CH + Math.sqrt(Math.max(0, CH * CH + 4 * CQ * exponent));
  return slope === 0 ? 0 : (2 * exponent) / slope;
}
