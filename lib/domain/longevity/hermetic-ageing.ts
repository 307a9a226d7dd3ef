/**
 * Ageing of a sealed (hermetic) packet: its moisture stays put, so only temperature changes, and
 * ageing = 10^-(KE - CW log10 m) x integral of 10^(CH t + CQ t^2) dt. The integral belongs to the store and to
 * (CH, CQ), which most crops share, so each store keeps one per pair and a packet costs two look-ups.
 */
import { integralBetween, integrateOverReadings, type RunningIntegral } from './running-integral';
import type { StoreClimate } from './store-climate';
import { type LongevityConstants, moistureFactorDays, temperatureFactor } from './viability-equation';

// A memo, not a state: the integral follows from the climate alone. Weak, so that it goes when the climate goes.
const integralsOfClimate = new WeakMap<StoreClimate, Map<string, RunningIntegral>>();

/**
 * The store's running integral of 10^(CH t + CQ t^2), in days at 0 C; built once per (CH, CQ) and kept.
 *
 * @param climate  from `storeClimate`
 * @param CH       per degree C
 * @param CQ       per degree C squared
 * @returns the running integral at UTC midnights
 * @throws RangeError when CH or CQ is not finite
 * Checked in tests/domain/longevity/hermetic-ageing.test.ts
 */
export function temperatureIntegral(climate: StoreClimate, { CH, CQ }: { CH: number; CQ: number }): RunningIntegral {
  let integrals = integralsOfClimate.get(climate);
  if (!integrals) {
    integrals = new Map();
    integralsOfClimate.set(climate, integrals);
  }
  const key = `${CH} ${CQ}`;
  let integral = integrals.get(key);
  if (!integral) {
    const { temperatureC } = climate.readings;
    integral = integrateOverReadings(climate, temperatureFactor({ CH, CQ }, climate.target.temperatureC), (i) =>
      temperatureFactor({ CH, CQ }, temperatureC[i] as number),
    );
    integrals.set(key, integral);
  }
  return integral;
}

/**
 * Probits lost by a sealed packet in one store between two days.
 *
 * @param climate          the store, from `storeClimate`
 * @param constants        the species' KE, CW, CH, CQ
 * @param moisturePercent  percent of fresh weight (already held at the low-moisture limit), 0 < m < 100
 * @param fromDay          days since 1970-01-01 UTC, whole: the midnight the stretch begins
 * @param toDay            days since 1970-01-01 UTC, whole, >= fromDay: the midnight it ends
 * @returns probits, >= 0; additive over stretches
 * @throws RangeError when an argument is outside the range above
 * @see Ellis & Roberts (1980), Ann. Bot. 45:13-30 (form: from memory)
 * Checked against `ageingProbits` in tests/domain/longevity/hermetic-ageing.test.ts
 */
export function hermeticAgeing(
  climate: StoreClimate,
  constants: LongevityConstants,
  moisturePercent: number,
  fromDay: number,
  toDay: number,
): number {
  return sealedAgeing(climate, constants, moisturePercent)(fromDay, toDay);
}

/**
 * `hermeticAgeing` of one packet as a function of the days: what does not depend on them is looked up once.
 *
 * @param climate, constants, moisturePercent  as in `hermeticAgeing`
 * @returns probits lost between two days; both as in `hermeticAgeing`
 * @throws RangeError as `hermeticAgeing` does
 * Checked through `hermeticAgeing` in tests/domain/longevity/hermetic-ageing.test.ts
 */
export function sealedAgeing(
  climate: StoreClimate,
  constants: LongevityConstants,
  moisturePercent: number,
): (fromDay: number, toDay: number) => number {
  const integral = temperatureIntegral(climate, constants);
  const daysPerProbitAtZeroC = moistureFactorDays(constants, moisturePercent);
  return (fromDay, toDay) => integralBetween(integral, fromDay, toDay) / daysPerProbitAtZeroC;
}
