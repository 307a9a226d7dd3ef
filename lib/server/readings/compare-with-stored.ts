import type Database from 'better-sqlite3';
import type { TimedReadings } from '@/lib/domain/logger/reading-store';

export type ReadingColumns = Pick<TimedReadings, 'atEpochSeconds' | 'temperatureC' | 'relativeHumidity'>;

export interface ReadingsThere {
  /** the store has a reading of this instant: it stays */
  alreadyThere: number;
  /** of these, how many say something else */
  saidOtherwise: number;
}

/** Compared before the server looks after other visitors again. */
const ROWS_AT_A_TIME = 10_000;
/** A humidity is kept as a proportion; smaller differences come from dividing by 100. */
const SAME = 1e-9;

/**
 * Lays readings beside those that a store has, instant by instant.
 *
 * @param readings  in the order of time, one an instant
 * @returns for each whether its instant is new (1), and how many are not
 * Checked in tests/server/readings/import-readings.test.ts
 */
export async function compareWithStored(
  database: Database.Database,
  storeId: string,
  { atEpochSeconds, temperatureC, relativeHumidity }: ReadingColumns,
  giveWay: () => Promise<void>,
): Promise<ReadingsThere & { isNew: Uint8Array }> {
  const total = atEpochSeconds.length;
  const isNew = new Uint8Array(total);
  let alreadyThere = 0;
  let saidOtherwise = 0;
  const stored = database
    .prepare<[string, number, number], [number, number, number | null]>(
      `SELECT "atEpochSeconds", "temperatureC", "relativeHumidity" FROM "Reading"
       WHERE "storeId" = ? AND "atEpochSeconds" BETWEEN ? AND ? AND NOT "takenBack" ORDER BY "atEpochSeconds"`,
    )
    .raw();
  for (let from = 0; from < total; from += ROWS_AT_A_TIME) {
    const to = Math.min(total, from + ROWS_AT_A_TIME);
    const rows = stored.all(storeId, atEpochSeconds[from] as number, atEpochSeconds[to - 1] as number);
    let next = 0;
    for (let index = from; index < to; index += 1) {
      const at = atEpochSeconds[index] as number;
      while (next < rows.length && (rows[next]?.[0] ?? 0) < at) next += 1;
      const there = rows[next];
      if (there?.[0] !== at) {
        isNew[index] = 1;
        continue;
      }
      alreadyThere += 1;
      const humidity = relativeHumidity[index] as number;
      const sameHumidity = there[2] === null ? Number.isNaN(humidity) : Math.abs(there[2] - humidity) <= SAME;
      if (Math.abs(there[1] - (temperatureC[index] as number)) > SAME || !sameHumidity) saidOtherwise += 1;
    }
    await giveWay();
  }
  return { isNew, alreadyThere, saidOtherwise };
}
