/**
 * A large collection for benchmarks: as many lots as asked for, spread over every crop of the reference, twenty years,
 * moistures, containers and stores as a real collection is. Written straight into the tables, without audit.
 */
import type Database from 'better-sqlite3';
import { addDays, yearOf } from '../lib/domain/calendar/calendar-date';
import { sigmaDays } from '../lib/domain/longevity/viability-equation';
import { equilibriumMoisture } from '../lib/domain/moisture/equilibrium';
import { connections } from '../lib/server/database/connections';
import { enqueueWrite } from '../lib/server/database/write-queue';
import { type CropJudging, loadCropJudging } from '../lib/server/judging/load-crop-judging';
import { today as currentDay } from '../lib/server/today';
import { demoCalendar } from './generators/demo-calendar';
import { type LargeStore, largeCollectionWriter } from './generators/large-collection-writer';
import { storeReadings } from './generators/store-readings';
import { drawTestOutcome } from './generators/test-outcome';
import { type Random, randomFor } from './random';
import { refuseCollection } from './refuse-collection';
import { LARGE_STORES, largeStores } from './scenarios/large-stores';
import { writeReadings } from './write-readings';

export interface LargeCollectionSize {
  lots: number;
  testsPerLot?: number;
  stores?: number;
  yearsOfReadings?: number;
}

const LOTS_PER_ACCESSION = 3;
const OLDEST_LOT_DAYS = 20 * 365;
const YOUNGEST_LOT_DAYS = 60;
const DAYS_TO_CLEAN = 30;
const TEST_DAYS = 14;
const REPLICATES = 4;
const SEEDS_PER_REPLICATE = 25;
/** Of all lots. */
const SHARE = { open: 0.12, moistureUnknown: 0.06, tooMoist: 0.02, untested: 0.08 };
const CONTAINERS = { sealed: ['foil-pouch', 'glass-jar', 'screw-cap-tube'], open: ['paper-envelope', 'plastic-box'] };
const ISOLATIONS = ['cage', 'distance', 'bagged flowers', 'hand pollination', 'none', 'unknown'] as const;

/**
 * Fills an empty, migrated database that has the reference facts. Nothing is judged yet.
 *
 * @param size.lots             lots, three to an accession, integer >= 1
 * @param size.testsPerLot      germination tests of each tested lot, default 3
 * @param size.stores           stores with a logger of their own, >= 1, default 8
 * @param size.yearsOfReadings  hourly readings up to today, default 2
 * @returns how many rows of each kind were written
 * @throws Error when the database holds a collection already
 * Checked in tests/seed-demo/large-collection.test.ts
 */
export async function loadLargeCollection({
  lots,
  testsPerLot = 3,
  stores = LARGE_STORES.length,
  yearsOfReadings = 2,
}: LargeCollectionSize): Promise<{ accessions: number; lots: number; tests: number; readings: number }> {
  const { readings } = await loadLargeStores({ stores, yearsOfReadings });
  return { ...(await loadLotsIntoLargeStores({ lots, testsPerLot })), readings };
}

/**
 * The stores of a large collection alone, with their readings: they take longest, and serve collections of any size.
 *
 * @throws Error when the database holds a collection already
 */
export async function loadLargeStores({
  stores,
  yearsOfReadings,
}: {
  stores: number;
  yearsOfReadings: number;
}): Promise<{ readings: number }> {
  const { bulk } = connections();
  const today = currentDay();
  refuseCollection(bulk);
  const write = largeCollectionWriter(bulk);
  let readings = 0;
  for (const { id, story } of largeStores(stores).map((one) => write.store(one))) {
    const logged = storeReadings(story.name, { ...story.climate, yearsLogged: yearsOfReadings }, demoCalendar(today));
    await writeReadings(id, logged);
    readings += logged.epochSeconds.length;
  }
  return { readings };
}

/** The lots and tests of a large collection, into the stores that `loadLargeStores` has written and nothing else. */
export async function loadLotsIntoLargeStores({
  lots,
  testsPerLot = 3,
}: {
  lots: number;
  testsPerLot?: number;
}): Promise<{ accessions: number; lots: number; tests: number }> {
  const { bulk } = connections();
  const today = currentDay();
  const crops = [...loadCropJudging(bulk, 'all').values()].filter((crop) => crop.seed !== null);
  const random = randomFor('large collection');
  const write = largeCollectionWriter(bulk);
  const stores = storesWritten(bulk);
  let accessions = 0;
  let tests = 0;
  await enqueueWrite(async () => {
    bulk.transaction(() => {
      let accessionId = '';
      let crop = crops[0] as CropJudging;
      for (let index = 0; index < lots; index += 1) {
        if (index % LOTS_PER_ACCESSION === 0) {
          crop = random.pick(crops);
          accessionId = write.accession(crop.id, `${crop.name} ${accessions + 1}`);
          accessions += 1;
        }
        const lot = inventLot(crop, random.pick(stores), testsPerLot, random, today);
        const written = write.lot({ ...lot, accessionId, generation: index % LOTS_PER_ACCESSION });
        for (const test of testsOf(lot, testsPerLot, random, today)) {
          write.test(written, test);
          tests += 1;
        }
      }
      write.numberSeries();
    })();
  });
  return { accessions, lots, tests };
}

function storesWritten(bulk: Database.Database): LargeStore[] {
  const rows = bulk.prepare<[], { id: string; name: string }>(`SELECT "id", "name" FROM "Store" ORDER BY "id"`).all();
  const stories = new Map(largeStores(rows.length).map((story) => [story.name, story]));
  return rows.map(({ id, name }) => {
    const story = stories.get(name);
    if (!story) throw new Error(`store ${name} is none of a large collection`);
    return { id, story };
  });
}

function inventLot(crop: CropJudging, store: LargeStore, testsPerLot: number, random: Random, today: string) {
  const { story } = store;
  const age = random.wholeBetween(YOUNGEST_LOT_DAYS, OLDEST_LOT_DAYS);
  const storedOn = addDays(today, -age);
  const isOpen = story.targetHumidityPercent !== undefined && random.fraction() < SHARE.open;
  const tooMoist = !isOpen && story.targetTemperatureC > 0 && random.fraction() < SHARE.tooMoist;
  const measured = !isOpen && random.fraction() >= SHARE.moistureUnknown;
  const oil = crop.seed?.oilFraction ?? 0;
  const inAir = (relativeHumidity: number) =>
    equilibriumMoisture({ relativeHumidity, temperatureC: 15, oilFraction: oil });
  const moisture = isOpen
    ? inAir((story.targetHumidityPercent ?? 50) / 100)
    : tooMoist
      ? random.between(15.2, 18)
      : inAir(random.between(0.14, 0.45));
  return {
    storeId: store.id,
    harvestedOn: addDays(storedOn, -DAYS_TO_CLEAN),
    harvestYear: yearOf(addDays(storedOn, -DAYS_TO_CLEAN)),
    storedOn,
    age,
    container: random.pick(isOpen ? CONTAINERS.open : CONTAINERS.sealed),
    moisturePercent: measured || tooMoist ? Number(moisture.toFixed(1)) : null,
    isolation: random.pick(ISOLATIONS),
    seeds: testsPerLot * REPLICATES * SEEDS_PER_REPLICATE + Math.round(100 * 10 ** random.between(0, 2)),
    initialProbit: 1.8 + 0.35 * random.normal(),
    probitsPerDay: Math.exp(0.4 * random.normal()) / daysPerProbit(crop, moisture, story.targetTemperatureC),
  };
}

type InventedLot = ReturnType<typeof inventLot>;

function daysPerProbit(crop: CropJudging, moisturePercent: number, temperatureC: number): number {
  if (!crop.seed) throw new Error(`${crop.name} has no longevity constants`);
  return sigmaDays(crop.seed.constants, { moisturePercent, temperatureC });
}

function testsOf(lot: InventedLot, testsPerLot: number, random: Random, today: string) {
  if (random.fraction() < SHARE.untested) return [];
  const latest = lot.age - TEST_DAYS - 1;
  return Array.from({ length: testsPerLot }, (_, index) => {
    const day = Math.round((latest * (index + random.between(0.1, 0.9))) / testsPerLot);
    const setOn = addDays(today, day - lot.age);
    const replicates = drawTestOutcome({
      viabilityProbit: lot.initialProbit - lot.probitsPerDay * day,
      replicates: REPLICATES,
      seedsPerReplicate: SEEDS_PER_REPLICATE,
      hardShare: 0,
      freshShare: 0.01,
      random,
    });
    return { setOn, finishedOn: addDays(setOn, TEST_DAYS), replicates };
  });
}
