import type Database from 'better-sqlite3';
import { toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { type StoreClimate, storeClimate } from '@/lib/domain/longevity/store-climate';
import { SECONDS_PER_DAY } from '@/lib/domain/longevity/store-day';
import type { NamedClimate } from '@/lib/domain/stock/split-stays';
import { type ClimateStretch, type LoggedDays, type StorePhase, storeTimeline } from '@/lib/domain/stock/store-phases';

/**
 * Store climates kept in memory, made anew when a store's readings change. The running integrals hang on the climate
 * object itself, so they live and go with it; all boxes that take their climate from one freezer share its object.
 */
interface Kept {
  climateVersion: number;
  climate: StoreClimate;
}

const holder = globalThis as typeof globalThis & { hilumClimates?: Map<string, Kept> };
/** Climates kept at once: far more than a bank has; a long-lived server drops those of targets that are no more. */
const MOST_CLIMATES_KEPT = 500;

/** What a store's first phase begins with; written by a trigger of the database. */
export const FIRST_PHASE_FROM = '0001-01-01';

interface StoreRow {
  id: string;
  name: string;
  parentId: string | null;
  climateVersion: number;
}

export interface StoreClimates {
  /** the climate now of a store, or the one that held through a stretch of days, by the id from `climatesThrough` */
  climateOf(climateId: string): StoreClimate;
  /** the climates of a store through time; one alone, with the store's own id, where nothing changed */
  climatesThrough(storeId: string): readonly NamedClimate[];
  /** where a climate comes from: readings of which store, target of which */
  sourceOf(climateId: string): ClimateStretch;
  /** where a store stood and how it was set, through time */
  phasesOf(storeId: string): readonly StorePhase[];
  nameOf(storeId: string): string;
}

export function storeClimates(bulk: Database.Database): StoreClimates {
  const stores = new Map(
    bulk
      .prepare<[], StoreRow>(`SELECT "id", "name", "parentId", "climateVersion" FROM "Store"`)
      .all()
      .map((store) => [store.id, store]),
  );
  const phases = readPhases(bulk);
  holder.hilumClimates ??= new Map();
  const kept = holder.hilumClimates;
  const timelines = new Map<string, readonly NamedClimate[]>();
  const logged = new Map<string, LoggedDays>();
  const sources = new Map<string, ClimateStretch>();
  // The stores were read once, so that no version can change from here on: each is compared once.
  const compared = new Map<string, StoreClimate>();

  return {
    nameOf: (storeId) => stores.get(storeId)?.name ?? '',
    phasesOf: (storeId) => phases.get(storeId) ?? [],
    climatesThrough,
    sourceOf,
    climateOf: (climateId) => {
      const climate = compared.get(climateId) ?? climateFrom(sourceOf(climateId));
      compared.set(climateId, climate);
      return climate;
    },
  };

  function climatesThrough(storeId: string): readonly NamedClimate[] {
    let timeline = timelines.get(storeId);
    if (!timeline) {
      timeline = nameClimates(storeId);
      timelines.set(storeId, timeline);
    }
    return timeline;
  }

  function sourceOf(climateId: string): ClimateStretch {
    if (!sources.has(climateId)) climatesThrough(climateId);
    const source = sources.get(climateId);
    if (!source) throw new Error(`climate ${climateId} does not exist`);
    return source;
  }

  /** The last stretch bears the store's own id: it is the climate now. */
  function nameClimates(storeId: string): NamedClimate[] {
    if (!stores.has(storeId)) throw new Error(`store ${storeId} does not exist`);
    const timeline = storeTimeline(storeId, (id) => phases.get(id) ?? [], loggedDays);
    if (!timeline.ok) throw new Error(`store ${storeId} has no climate: ${timeline.reason}`);
    const { stretches } = timeline;
    return stretches.map((stretch, index) => {
      const climateId = index === stretches.length - 1 ? storeId : `${storeId} until ${stretch.toDay}`;
      sources.set(climateId, stretch);
      return { fromDay: stretch.fromDay, climateId };
    });
  }

  function loggedDays(storeId: string): LoggedDays | null {
    if ((stores.get(storeId)?.climateVersion ?? 0) <= 0) return null;
    let days = logged.get(storeId);
    if (!days) {
      days = readLoggedDays(bulk, storeId);
      logged.set(storeId, days);
    }
    return days;
  }

  function climateFrom({ loggedStoreId, target }: ClimateStretch): StoreClimate {
    const climateVersion = (loggedStoreId && stores.get(loggedStoreId)?.climateVersion) || 0;
    const key = [bulk.name, loggedStoreId, target.temperatureC, target.relativeHumidity].join(' ');
    const known = kept.get(key);
    if (known?.climateVersion === climateVersion) return known.climate;
    const climate = storeClimate(loggedStoreId ? readReadings(bulk, loggedStoreId) : NO_READINGS, {
      temperatureC: target.temperatureC,
      relativeHumidity: target.relativeHumidity ?? undefined,
    });
    if (kept.size >= MOST_CLIMATES_KEPT) kept.clear();
    kept.set(key, { climateVersion, climate });
    return climate;
  }
}

const NO_READINGS = { epochSeconds: new Float64Array(0), temperatureC: new Float64Array(0) };

interface PhaseRow {
  storeId: string;
  from: string;
  parentId: string | null;
  targetTemperatureC: number | null;
  targetRelativeHumidity: number | null;
}

function readPhases(bulk: Database.Database): Map<string, StorePhase[]> {
  const rows = bulk
    .prepare<[], PhaseRow>(
      `SELECT "storeId", "from", "parentId", "targetTemperatureC", "targetRelativeHumidity" FROM "StorePhase" ORDER BY "id"`,
    )
    .all();
  const phases = new Map<string, StorePhase[]>();
  for (const row of rows) {
    const ofStore = phases.get(row.storeId);
    if (ofStore) ofStore.push(phaseOf(row));
    else phases.set(row.storeId, [phaseOf(row)]);
  }
  return phases;
}

export function phaseOf({ storeId, from, parentId, targetTemperatureC, targetRelativeHumidity }: PhaseRow): StorePhase {
  return {
    storeId,
    fromDay: from === FIRST_PHASE_FROM ? -Infinity : toEpochDay(from),
    parentId,
    target:
      targetTemperatureC === null
        ? null
        : { temperatureC: targetTemperatureC, relativeHumidity: targetRelativeHumidity },
  };
}

/** Two steps along the primary key. */
function readLoggedDays(bulk: Database.Database, storeId: string): LoggedDays {
  const edge = (order: 'ASC' | 'DESC') =>
    bulk
      .prepare<[string], number>(
        `SELECT "atEpochSeconds" FROM "Reading" WHERE "storeId" = ? AND NOT "takenBack" ORDER BY "atEpochSeconds" ${order} LIMIT 1`,
      )
      .pluck()
      .get(storeId) ?? 0;
  return {
    fromDay: Math.floor(edge('ASC') / SECONDS_PER_DAY),
    toDay: Math.floor(edge('DESC') / SECONDS_PER_DAY) + 1,
  };
}

function readReadings(bulk: Database.Database, storeId: string) {
  const rows = bulk
    .prepare<[string], [number, number, number | null]>(
      `SELECT "atEpochSeconds", "temperatureC", "relativeHumidity" FROM "Reading" WHERE "storeId" = ? AND NOT "takenBack" ORDER BY "atEpochSeconds"`,
    )
    .raw()
    .all(storeId);
  const epochSeconds = new Float64Array(rows.length);
  const temperatureC = new Float64Array(rows.length);
  const relativeHumidity = new Float64Array(rows.length);
  for (const [index, [time, temperature, humidity]] of rows.entries()) {
    epochSeconds[index] = time;
    temperatureC[index] = temperature;
    relativeHumidity[index] = humidity ?? Number.NaN;
  }
  return { epochSeconds, temperatureC, relativeHumidity };
}
