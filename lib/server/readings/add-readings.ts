import type Database from 'better-sqlite3';
import { compareWithStored, type ReadingColumns, type ReadingsThere } from './compare-with-stored';
import { raiseClimateVersion } from './raise-climate-version';
import { refreshReadingDays } from './refresh-reading-days';

export interface AddedReadings extends ReadingsThere {
  added: number;
}

export interface AddReadingsOptions {
  giveWay?: () => Promise<void>;
  onProgress?: (done: number) => void;
}

/** Written with one statement: fewer crossings into SQLite. More gains nothing (measured with npm run bench). */
const ROWS_A_STATEMENT = 50;
/** Rows written before the server looks after other visitors again: some ten milliseconds. */
const ROWS_AT_A_TIME = 10_000;

/**
 * Adds to a store the readings of instants for which it has none, and keeps its daily sums and its climate version.
 * Runs inside a transaction on the bulk connection.
 *
 * @param readings  in the order of time, one an instant
 * @returns how many are new; adding the same readings again adds none and changes nothing
 * Checked in tests/server/readings/import-readings.test.ts
 */
export async function addReadings(
  bulk: Database.Database,
  storeId: string,
  importId: number,
  readings: ReadingColumns,
  { giveWay = async () => undefined, onProgress }: AddReadingsOptions = {},
): Promise<AddedReadings> {
  const { atEpochSeconds, temperatureC, relativeHumidity } = readings;
  const total = atEpochSeconds.length;
  const outcome: AddedReadings = { added: 0, alreadyThere: 0, saidOtherwise: 0 };
  if (total === 0) return outcome;
  const { isNew, ...there } = await compareWithStored(bulk, storeId, readings, giveWay);
  Object.assign(outcome, there);
  const insert = rowInserter(bulk, storeId, importId);
  let firstNew = -1;
  let lastNew = -1;
  for (let index = 0; index < total; index += 1) {
    if (isNew[index] === 1) {
      if (firstNew < 0) firstNew = index;
      lastNew = index;
      const humidity = relativeHumidity[index] as number;
      insert.add(
        atEpochSeconds[index] as number,
        temperatureC[index] as number,
        Number.isNaN(humidity) ? null : humidity,
      );
      outcome.added += 1;
    }
    if (index % ROWS_AT_A_TIME === ROWS_AT_A_TIME - 1) {
      onProgress?.(index + 1);
      await giveWay();
    }
  }
  insert.finish();
  if (outcome.added > 0) {
    const [from, to] = [atEpochSeconds[firstNew] as number, atEpochSeconds[lastNew] as number];
    await refreshReadingDays(bulk, storeId, from, to, giveWay);
    raiseClimateVersion(bulk, storeId);
  }
  return outcome;
}

/** Inserts many rows with one statement, and the last few singly. */
function rowInserter(bulk: Database.Database, storeId: string, importId: number) {
  const insertOf = (rows: number) =>
    bulk.prepare(
      `INSERT INTO "Reading" ("storeId", "importId", "atEpochSeconds", "temperatureC", "relativeHumidity", "takenBack")
       VALUES ${new Array(rows).fill('(@storeId, @importId, ?, ?, ?, 0)').join(', ')}`,
    );
  const many = insertOf(ROWS_A_STATEMENT);
  const one = insertOf(1);
  const same = { storeId, importId };
  let values: (number | null)[] = [];
  return {
    add(at: number, temperatureC: number, relativeHumidity: number | null): void {
      values.push(at, temperatureC, relativeHumidity);
      if (values.length < 3 * ROWS_A_STATEMENT) return;
      many.run(values, same);
      values = [];
    },
    finish(): void {
      for (let at = 0; at < values.length; at += 3) one.run(values.slice(at, at + 3), same);
    },
  };
}
