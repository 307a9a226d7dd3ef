/**
 * Ageing of seed in an open (not airtight) container: its moisture follows the store's humidity. Equilibrium is
 * taken to be immediate, which a paper bag nears within days and a full sack within weeks; the equilibrium itself
 * is the caller's, because it depends on the seed's oil and on the low-moisture limit.
 */
import { HIGH_MOISTURE_LIMIT_PERCENT } from './equation-limits';
import { integralBetween, integrateOverReadings, type RunningIntegral } from './running-integral';
import type { StoreClimate } from './store-climate';
import { type LongevityConstants, sigmaDays } from './viability-equation';

/** Moisture (percent of fresh weight, 0 < m < 100) of seed at rest in air of this humidity (0-1) and temperature. */
export type MoistureAt = (relativeHumidity: number, temperatureC: number) => number;

export type OpenContainerIntegral =
  | {
      ok: true;
      /** probits lost */
      probits: RunningIntegral;
      /** days above 15 % moisture, where the equation does not hold */
      daysTooMoist: RunningIntegral;
    }
  | { ok: false; reason: string };

/**
 * The running integral of probits lost in open containers in one store: build once per (crop, store), keep, and
 * read with `openContainerAgeing`.
 *
 * @param climate     from `storeClimate`; needs a humidity target wherever humidity was not read
 * @param constants   the species' KE, CW, CH, CQ
 * @param moistureAt  equilibrium moisture, percent of fresh weight; hold it at the low-moisture limit there
 * @returns running integrals at UTC midnights, or `{ ok: false, reason }` where the humidity is not known
 * @throws RangeError when `moistureAt` answers outside 0-100
 * Checked against a fine sum in tests/domain/longevity/open-container-ageing.test.ts
 */
export function openContainerIntegral(
  climate: StoreClimate,
  constants: LongevityConstants,
  moistureAt: MoistureAt,
): OpenContainerIntegral {
  const { temperatureC, relativeHumidity } = climate.readings;
  const { target } = climate;
  if (target.relativeHumidity === undefined) {
    return {
      ok: false,
      reason:
        'Seed in an open container takes its moisture from the air: give the store a humidity target, which stands in where none was logged.',
    };
  }
  const targetHumidity = target.relativeHumidity;
  const moistureOfReading = (i: number): number => {
    const read = relativeHumidity?.[i];
    const humidity = read === undefined || Number.isNaN(read) ? targetHumidity : read;
    return moistureAt(humidity, temperatureC[i] as number);
  };
  const targetMoisture = moistureAt(targetHumidity, target.temperatureC);
  const moistures = new Float64Array(temperatureC.length);
  for (let i = 0; i < moistures.length; i += 1) moistures[i] = moistureOfReading(i);
  const tooMoist = (moisturePercent: number): number => (moisturePercent > HIGH_MOISTURE_LIMIT_PERCENT ? 1 : 0);
  return {
    ok: true,
    probits: integrateOverReadings(
      climate,
      1 / sigmaDays(constants, { moisturePercent: targetMoisture, temperatureC: target.temperatureC }),
      (i) =>
        1 / sigmaDays(constants, { moisturePercent: moistures[i] as number, temperatureC: temperatureC[i] as number }),
    ),
    daysTooMoist: integrateOverReadings(climate, tooMoist(targetMoisture), (i) => tooMoist(moistures[i] as number)),
  };
}

/**
 * Probits lost by seed in an open container between two days.
 *
 * @param integral  from `openContainerIntegral`, the `ok: true` case
 * @param fromDay   days since 1970-01-01 UTC, whole
 * @param toDay     days since 1970-01-01 UTC, whole, >= fromDay
 * @returns probits lost (>= 0) and the days in which seed was above 15 % moisture, where they are not to be trusted
 * @throws RangeError when a day is not whole or the stretch runs backwards
 * Checked in tests/domain/longevity/open-container-ageing.test.ts
 */
export function openContainerAgeing(
  integral: Extract<OpenContainerIntegral, { ok: true }>,
  fromDay: number,
  toDay: number,
): { probits: number; daysTooMoist: number } {
  return {
    probits: integralBetween(integral.probits, fromDay, toDay),
    daysTooMoist: integralBetween(integral.daysTooMoist, fromDay, toDay),
  };
}
