/**
 * The ageing of seed through one stay: in one store, in one container. Sealed seed ages at the moisture it was packed
 * with; open seed follows the humidity of the store.
 */
import { toEpochDay } from '../calendar/calendar-date';
import { equilibriumMoisture, MAX_EQUILIBRIUM_RELATIVE_HUMIDITY } from '../moisture/equilibrium';
import type { MoistureSource } from '../moisture/moisture-source';
import type { StoragePeriod } from '../stock/storage-history';
import { effectiveConditions, HIGH_MOISTURE_LIMIT_PERCENT } from './equation-limits';
import { sealedAgeing, temperatureIntegral } from './hermetic-ageing';
import { type OpenContainerIntegral, openContainerAgeing, openSeedIntegral } from './open-container-ageing';
import type { SeedKind } from './seed-kind';
import type { StoreClimate } from './store-climate';
import { moistureFactorDays } from './viability-equation';

export interface StayAgeing {
  ok: true;
  /** probits lost between two whole days since 1970-01-01 */
  between(fromDay: number, toDay: number): number;
  /** probits a day if the store were at its target throughout */
  targetRatePerDay: number;
  /** percent of fresh weight; of open seed, that at the store's target */
  moisturePercent: number;
  moistureAssumed: boolean;
  moistureFrom: MoistureSource;
  outsideFittedRange: boolean;
  notes: string[];
}

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
 * @param period   the stay, from `storageHistory`
 * @param climate  of its store, from `storeClimate`
 * @param seed     with its low-moisture limit filled in (`withLowMoistureLimit`)
 * @returns its ageing between any two days, or `{ ok: false, reason }` where the equation does not hold
 * Checked through `packetAgeing` in tests/domain/longevity/packet-ageing.test.ts
 */
export function stayAgeing(
  period: StoragePeriod,
  climate: StoreClimate,
  seed: SeedKind,
): StayAgeing | { ok: false; reason: string } {
  return period.hermetic ? sealedStay(period, climate, seed) : openStay(period, climate, seed);
}

function sealedStay(
  period: StoragePeriod,
  climate: StoreClimate,
  seed: SeedKind,
): StayAgeing | { ok: false; reason: string } {
  const moistureAssumed = period.moisturePercent === null;
  const moisturePercent = period.moisturePercent ?? roomMoisturePercent(seed.oilFraction);
  const conditions = effectiveConditions({
    constantsRange: seed.constantsRange,
    storageBehaviour: seed.storageBehaviour,
    moisturePercent,
    temperatureC: climate.target.temperatureC,
  });
  if (!conditions.ok) return conditions;
  const moistureFrom = sealedMoistureFrom(period);
  const notes = moistureNotes(moistureFrom, moisturePercent);
  return {
    ok: true,
    between: sealedAgeing(climate, seed.constants, conditions.moisturePercent),
    targetRatePerDay:
      temperatureIntegral(climate, seed.constants).targetRatePerDay /
      moistureFactorDays(seed.constants, conditions.moisturePercent),
    moisturePercent,
    moistureAssumed,
    moistureFrom,
    outsideFittedRange: conditions.outsideFittedRange,
    notes: [...notes, ...conditions.notes],
  };
}

function sealedMoistureFrom({ moisturePercent, measured }: StoragePeriod): MoistureSource {
  if (measured) return { kind: 'measured', tests: measured.tests };
  return { kind: moisturePercent === null ? 'assumed' : 'written' };
}

function moistureNotes(from: MoistureSource, moisturePercent: number): string[] {
  const figure = `${moisturePercent.toFixed(1)} %`;
  if (from.kind === 'assumed') {
    return [`Moisture was not measured: reckoned at ${figure}, as of seed from an ordinary room.`];
  }
  if (from.kind !== 'measured') return [];
  const tests = from.tests.map(({ number }) => number).join(', ');
  return [`Moisture of a sealed stay was not written down: reckoned at ${figure}, as measured (${tests}).`];
}

function openStay(
  period: StoragePeriod,
  climate: StoreClimate,
  seed: SeedKind,
): StayAgeing | { ok: false; reason: string } {
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
    targetRatePerDay: integral.probits.targetRatePerDay,
    moisturePercent,
    moistureAssumed: false,
    moistureFrom: { kind: 'air' },
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
