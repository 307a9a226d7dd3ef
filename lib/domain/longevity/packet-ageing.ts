/**
 * The ageing of one packet over its whole storage history, and on under its present store.
 *
 * Sealed stays age at the moisture they were packed with; open stays follow the store's humidity. Ageing before the
 * first placement (drying and cleaning, days to weeks) is not reckoned: the first test already feels it. A moisture
 * that was never measured is taken as that of seed at rest in room air (50 % relative humidity, 20 C), which is moist
 * for a sealed packet and so errs towards earlier tests; the caller widens the prior for it.
 */
import { toEpochDay } from '../calendar/calendar-date';
import { equilibriumMoisture, MAX_EQUILIBRIUM_RELATIVE_HUMIDITY } from '../moisture/equilibrium';
import type { StorageBehaviour } from '../reference/crop-facts';
import type { StoragePeriod } from '../stock/storage-history';
import { type ConstantsRange, effectiveConditions, HIGH_MOISTURE_LIMIT_PERCENT } from './equation-limits';
import { sealedAgeing } from './hermetic-ageing';
import { withLowMoistureLimit } from './low-moisture-limit';
import { type OpenContainerIntegral, openContainerAgeing, openSeedIntegral } from './open-container-ageing';
import type { StoreClimate } from './store-climate';
import type { LongevityConstants } from './viability-equation';

/** What the ageing of a crop's seed depends on. */
export interface SeedKind {
  constants: LongevityConstants;
  constantsRange: ConstantsRange;
  storageBehaviour: StorageBehaviour;
  /** oil as a fraction of dry weight, 0-0.8 */
  oilFraction: number;
}

export type PacketAgeing =
  | {
      ok: true;
      /** probits lost from the first placement to midnight of a day (days since 1970-01-01); runs on past the history */
      probitsAt(day: number): number;
      /** probits a day under the present store */
      ratePerDay: number;
      /** percent of fresh weight now */
      moisturePercent: number;
      moistureAssumed: boolean;
      outsideFittedRange: boolean;
      notes: string[];
    }
  | { ok: false; reason: string };

/** Air of an ordinary room, for seed whose moisture nobody measured. */
const ROOM_RELATIVE_HUMIDITY = 0.5;
const ROOM_TEMPERATURE_C = 20;
const DAYS_OF_A_YEAR = 365;
/** Where no low-moisture limit is known: the equation wants some moisture. */
const LEAST_MOISTURE_PERCENT = 0.1;
/** Days a year that an open packet may be above the high-moisture limit before no forecast is given. */
const DAYS_TOO_MOIST_ALLOWED_PER_YEAR = 10;

const openIntegrals = new WeakMap<StoreClimate, Map<string, OpenContainerIntegral>>();

/**
 * @param periods    the packet's stays, contiguous, from `storageHistory`; at least one
 * @param climateOf  a climate by its id
 * @param seed       constants with their range, storage behaviour and oil
 * @returns ageing at any day with what had to be assumed, or `{ ok: false, reason }` where the equation does not hold
 * @throws RangeError when there is no period
 * Checked in tests/domain/longevity/packet-ageing.test.ts
 */
export function packetAgeing(
  periods: readonly StoragePeriod[],
  climateOf: (climateId: string) => StoreClimate,
  seed: SeedKind,
): PacketAgeing {
  const last = periods.at(-1);
  const first = periods[0];
  if (!first || !last) throw new RangeError('packetAgeing: periods must not be empty');
  const withLimit = withLowMoistureLimit(seed);
  const stays: Stay[] = [];
  for (const period of periods) {
    const stay = stayAgeing(period, climateOf(period.climateId), withLimit);
    if (!stay.ok) return stay;
    stays.push(stay);
  }
  const lastStay = stays.at(-1) as Stay;
  const endDay = toEpochDay(last.to);
  const ratePerDay = lastStay.between(endDay - DAYS_OF_A_YEAR, endDay) / DAYS_OF_A_YEAR;
  const starts: number[] = [];
  const fromDays: number[] = [];
  let total = 0;
  periods.forEach((period, index) => {
    starts.push(total);
    const fromDay = toEpochDay(period.from);
    fromDays.push(fromDay);
    total += (stays[index] as Stay).between(fromDay, toEpochDay(period.to));
  });
  return {
    ok: true,
    probitsAt: (day) => {
      if (day >= endDay) return total + (day - endDay) * ratePerDay;
      let index = periods.length - 1;
      while (index > 0 && (fromDays[index] as number) > day) index -= 1;
      const from = fromDays[index] as number;
      if (day <= from) return starts[index] as number;
      return (starts[index] as number) + (stays[index] as Stay).between(from, day);
    },
    ratePerDay,
    moisturePercent: lastStay.moisturePercent,
    moistureAssumed: stays.some((stay) => stay.moistureAssumed),
    outsideFittedRange: stays.some((stay) => stay.outsideFittedRange),
    notes: [...new Set(stays.flatMap((stay) => stay.notes))],
  };
}

interface Stay {
  ok: true;
  between(fromDay: number, toDay: number): number;
  moisturePercent: number;
  moistureAssumed: boolean;
  outsideFittedRange: boolean;
  notes: string[];
}

function stayAgeing(
  period: StoragePeriod,
  climate: StoreClimate,
  seed: SeedKind,
): Stay | { ok: false; reason: string } {
  return period.hermetic ? sealedStay(period, climate, seed) : openStay(period, climate, seed);
}

function sealedStay(
  period: StoragePeriod,
  climate: StoreClimate,
  seed: SeedKind,
): Stay | { ok: false; reason: string } {
  const moistureAssumed = period.moisturePercent === null;
  const moisturePercent = period.moisturePercent ?? roomMoisturePercent(seed.oilFraction);
  const conditions = effectiveConditions({
    constantsRange: seed.constantsRange,
    storageBehaviour: seed.storageBehaviour,
    moisturePercent,
    temperatureC: climate.target.temperatureC,
  });
  if (!conditions.ok) return conditions;
  const notes = moistureAssumed
    ? [`Moisture was not measured: reckoned at ${moisturePercent.toFixed(1)} %, as of seed from an ordinary room.`]
    : [];
  return {
    ok: true,
    between: sealedAgeing(climate, seed.constants, conditions.moisturePercent),
    moisturePercent,
    moistureAssumed,
    outsideFittedRange: conditions.outsideFittedRange,
    notes: [...notes, ...conditions.notes],
  };
}

function openStay(period: StoragePeriod, climate: StoreClimate, seed: SeedKind): Stay | { ok: false; reason: string } {
  const integral = openIntegral(climate, seed);
  if (!integral.ok) return integral;
  const { temperatureC, relativeHumidity } = climate.target;
  const moisturePercent = moistureInAir(relativeHumidity as number, temperatureC, seed);
  const conditions = effectiveConditions({
    constantsRange: seed.constantsRange,
    storageBehaviour: seed.storageBehaviour,
    moisturePercent: Math.min(moisturePercent, HIGH_MOISTURE_LIMIT_PERCENT),
    temperatureC,
  });
  if (!conditions.ok) return conditions;
  const { daysTooMoist } = openContainerAgeing(integral, toEpochDay(period.from), toEpochDay(period.to));
  const allowed = DAYS_TOO_MOIST_ALLOWED_PER_YEAR * Math.max(1, period.days / DAYS_OF_A_YEAR);
  if (daysTooMoist > allowed || moisturePercent > HIGH_MOISTURE_LIMIT_PERCENT) {
    return {
      ok: false,
      reason: `In an open container in this store the seed takes up more than ${HIGH_MOISTURE_LIMIT_PERCENT} % moisture, where the equation does not hold: dry and seal it.`,
    };
  }
  return {
    ok: true,
    between: (fromDay, toDay) => openContainerAgeing(integral, fromDay, toDay).probits,
    moisturePercent,
    moistureAssumed: false,
    outsideFittedRange: conditions.outsideFittedRange,
    notes: ['In an open container the seed follows the humidity of the store.', ...conditions.notes],
  };
}

function openIntegral(climate: StoreClimate, seed: SeedKind): OpenContainerIntegral {
  let ofClimate = openIntegrals.get(climate);
  if (!ofClimate) {
    ofClimate = new Map();
    openIntegrals.set(climate, ofClimate);
  }
  const { KE, CW, CH, CQ } = seed.constants;
  const key = [KE, CW, CH, CQ, seed.oilFraction, seed.constantsRange.lowMoistureLimitPercent].join(' ');
  let integral = ofClimate.get(key);
  if (!integral) {
    const lowMoistureLimitPercent = seed.constantsRange.lowMoistureLimitPercent ?? LEAST_MOISTURE_PERCENT;
    integral = openSeedIntegral(climate, { ...seed, lowMoistureLimitPercent });
    ofClimate.set(key, integral);
  }
  return integral;
}

/** Equilibrium moisture for the equation: never below the low-moisture limit, humidity held where the form ends. */
function moistureInAir(relativeHumidity: number, temperatureC: number, seed: SeedKind): number {
  const moisture = equilibriumMoisture({
    relativeHumidity: Math.min(relativeHumidity, MAX_EQUILIBRIUM_RELATIVE_HUMIDITY),
    temperatureC,
    oilFraction: seed.oilFraction,
  });
  return Math.max(moisture, seed.constantsRange.lowMoistureLimitPercent ?? LEAST_MOISTURE_PERCENT);
}

function roomMoisturePercent(oilFraction: number): number {
  return equilibriumMoisture({
    relativeHumidity: ROOM_RELATIVE_HUMIDITY,
    temperatureC: ROOM_TEMPERATURE_C,
    oilFraction,
  });
}
