/**
 * Ageing of seed in an open (not airtight) container: its moisture follows the store's humidity. Equilibrium is
 * taken to be immediate, which a paper bag nears within days and a full sack within weeks; the equilibrium itself
 * is the caller's, because it depends on the seed's oil and on the low-moisture limit.
 */
import { dryBasisFromFresh, freshBasisFromDry } from '../moisture/basis';
import { equilibriumMoisture, MAX_EQUILIBRIUM_RELATIVE_HUMIDITY } from '../moisture/equilibrium';
import { HIGH_MOISTURE_LIMIT_PERCENT } from './equation-limits';
import { integralBetween, integrateOverReadings, type RunningIntegral } from './running-integral';
import type { StoreClimate } from './store-climate';
import { type LongevityConstants, moistureFactorDays, sigmaDays, temperatureFactor } from './viability-equation';

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
  const { target } = climate;
  if (target.relativeHumidity === undefined) return NO_HUMIDITY;
  const moistures = new Float64Array(climate.readings.temperatureC.length);
  const targetMoisture = eachMoisture(climate, target.relativeHumidity, moistureAt, moistures);
  return integrateMoistures(climate, constants, targetMoisture, moistures);
}

/** What the seed of a crop makes of the air of a store. */
export type SeedInAir = {
  constants: LongevityConstants;
  /** oil as a fraction of dry weight, 0-0.8 */
  oilFraction: number;
  /** percent of fresh weight, at which moisture is held */
  lowMoistureLimitPercent: number;
};

/**
 * The same for a crop's seed. What the store's air makes of seed without oil, and how temperature speeds ageing, belong to the
 * store and are kept with it: they are most of the work, and every crop that lies there open asks for them.
 *
 * @param climate  from `storeClimate`; needs a humidity target wherever humidity was not read
 * @param seed     its constants, oil and low-moisture limit
 * @returns running integrals at UTC midnights, or `{ ok: false, reason }` where the humidity is not known
 * Checked against `openContainerIntegral` in tests/domain/longevity/open-container-ageing.test.ts
 */
export function openSeedIntegral(climate: StoreClimate, seed: SeedInAir): OpenContainerIntegral {
  const { relativeHumidity } = climate.target;
  if (relativeHumidity === undefined) return NO_HUMIDITY;
  const air = airOf(climate, relativeHumidity);
  const withoutOil = 1 - seed.oilFraction;
  const moistureOf = (dryBasisWithoutOil: number): number =>
    Math.max(seed.lowMoistureLimitPercent, freshBasisFromDry(dryBasisWithoutOil * withoutOil));
  const moistures = new Float64Array(air.dryBasis.length);
  for (let i = 0; i < moistures.length; i += 1) moistures[i] = moistureOf(air.dryBasis[i] as number);
  return integrateMoistures(climate, seed.constants, moistureOf(air.targetDryBasis), moistures);
}

/** The moisture of seed in still air: humidity is held where the equilibrium equation ends. */
function withoutOilInAir(relativeHumidity: number, temperatureC: number): number {
  const held = Math.min(relativeHumidity, MAX_EQUILIBRIUM_RELATIVE_HUMIDITY);
  return dryBasisFromFresh(equilibriumMoisture({ relativeHumidity: held, temperatureC, oilFraction: 0 }));
}

type Air = {
  /** percent of dry weight, of seed without oil, at each reading and at the target */
  dryBasis: Float64Array;
  targetDryBasis: number;
};

// Memos, not states: they follow from the climate alone. Weak, so that they go when the climate goes.
const airs = new WeakMap<StoreClimate, Air>();
const temperatureFactors = new WeakMap<StoreClimate, Map<string, Float64Array>>();

function airOf(climate: StoreClimate, targetHumidity: number): Air {
  let air = airs.get(climate);
  if (!air) {
    const dryBasis = new Float64Array(climate.readings.temperatureC.length);
    air = { dryBasis, targetDryBasis: eachMoisture(climate, targetHumidity, withoutOilInAir, dryBasis) };
    airs.set(climate, air);
  }
  return air;
}

function temperatureFactorsOf(climate: StoreClimate, constants: LongevityConstants): Float64Array {
  let known = temperatureFactors.get(climate);
  if (!known) {
    known = new Map();
    temperatureFactors.set(climate, known);
  }
  const key = `${constants.CH} ${constants.CQ}`;
  let factors = known.get(key);
  if (!factors) {
    const { temperatureC } = climate.readings;
    factors = new Float64Array(temperatureC.length);
    for (let i = 0; i < factors.length; i += 1) factors[i] = temperatureFactor(constants, temperatureC[i] as number);
    known.set(key, factors);
  }
  return factors;
}

/** Fills in the moisture at each reading, with the target's humidity where none was read; returns that at the target. */
function eachMoisture(
  { readings: { temperatureC, relativeHumidity }, target }: StoreClimate,
  targetHumidity: number,
  moistureAt: MoistureAt,
  moistures: Float64Array,
): number {
  for (let i = 0; i < moistures.length; i += 1) {
    const read = relativeHumidity?.[i];
    const humidity = read === undefined || Number.isNaN(read) ? targetHumidity : read;
    moistures[i] = moistureAt(humidity, temperatureC[i] as number);
  }
  return moistureAt(targetHumidity, target.temperatureC);
}

function integrateMoistures(
  climate: StoreClimate,
  constants: LongevityConstants,
  targetMoisture: number,
  moistures: Float64Array,
): OpenContainerIntegral {
  const factors = temperatureFactorsOf(climate, constants);
  const tooMoist = (moisturePercent: number): number => (moisturePercent > HIGH_MOISTURE_LIMIT_PERCENT ? 1 : 0);
  return {
    ok: true,
    probits: integrateOverReadings(
      climate,
      1 / sigmaDays(constants, { moisturePercent: targetMoisture, temperatureC: climate.target.temperatureC }),
      (i) => (factors[i] as number) / moistureFactorDays(constants, moistures[i] as number),
    ),
    daysTooMoist: integrateOverReadings(climate, tooMoist(targetMoisture), (i) => tooMoist(moistures[i] as number)),
  };
}

const NO_HUMIDITY: OpenContainerIntegral = {
  ok: false,
  reason:
    'Seed in an open container takes its moisture from the air: give the store a humidity target, which stands in where none was logged.',
};

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
