import type Database from 'better-sqlite3';
import { type StoreClimate, storeClimate } from '@/lib/domain/longevity/store-climate';

/**
 * Store climates kept in memory, made anew when a store's readings or targets change. The running integrals hang on
 * the climate object itself, so they live and go with it. A nested store without readings of its own takes those of
 * the nearest store around it: a box on a shelf is as cold as its freezer.
 */
interface Kept {
  version: string;
  climate: StoreClimate;
}

const holder = globalThis as typeof globalThis & { hilumClimates?: Map<string, Kept> };

interface StoreRow {
  id: string;
  name: string;
  parentId: string | null;
  targetTemperatureC: number;
  targetRelativeHumidity: number | null;
  climateVersion: number;
}

export interface StoreClimates {
  climateOf(storeId: string): StoreClimate;
  nameOf(storeId: string): string;
}

export function storeClimates(bulk: Database.Database): StoreClimates {
  const stores = new Map(
    bulk
      .prepare<[], StoreRow>(
        `SELECT "id", "name", "parentId", "targetTemperatureC", "targetRelativeHumidity", "climateVersion" FROM "Store"`,
      )
      .all()
      .map((store) => [store.id, store]),
  );
  holder.hilumClimates ??= new Map();
  const kept = holder.hilumClimates;
  // The stores were read once, so that no version can change from here on: each is compared once.
  const compared = new Map<string, StoreClimate>();
  return {
    nameOf: (storeId) => stores.get(storeId)?.name ?? '',
    climateOf: (storeId) => {
      const climate = compared.get(storeId) ?? climateOf(storeId);
      compared.set(storeId, climate);
      return climate;
    },
  };

  function climateOf(storeId: string): StoreClimate {
    const store = stores.get(storeId);
    if (!store) throw new Error(`store ${storeId} does not exist`);
    const logged = nearestLogged(store, stores);
    const version = [
      bulk.name,
      logged?.id,
      logged?.climateVersion,
      store.targetTemperatureC,
      store.targetRelativeHumidity,
    ].join(' ');
    const known = kept.get(storeId);
    if (known?.version === version) return known.climate;
    const climate = storeClimate(logged ? readReadings(bulk, logged.id) : NO_READINGS, {
      temperatureC: store.targetTemperatureC,
      relativeHumidity: store.targetRelativeHumidity ?? undefined,
    });
    kept.set(storeId, { version, climate });
    return climate;
  }
}

const NO_READINGS = { epochSeconds: new Float64Array(0), temperatureC: new Float64Array(0) };

function nearestLogged(store: StoreRow, stores: Map<string, StoreRow>): StoreRow | null {
  const seen = new Set<string>();
  for (let place: StoreRow | undefined = store; place && !seen.has(place.id); ) {
    if (place.climateVersion > 0) return place;
    seen.add(place.id);
    place = place.parentId ? stores.get(place.parentId) : undefined;
  }
  return null;
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
