import type Database from 'better-sqlite3';
import { enqueueWrite } from '../lib/server/database/write-queue';
import type { Readings } from './generators/store-readings';

/** Puts a logger's readings into a store, many rows at once, and makes known that its climate has changed. */
export async function writeReadings(bulk: Database.Database, storeId: string, readings: Readings): Promise<void> {
  await enqueueWrite(async () => {
    const insert = bulk.prepare(
      `INSERT INTO "Reading" ("storeId", "atEpochSeconds", "temperatureC", "relativeHumidity") VALUES (?, ?, ?, ?)`,
    );
    bulk.transaction(() => {
      readings.epochSeconds.forEach((at, index) => {
        const humidity = readings.relativeHumidity[index] as number;
        insert.run(storeId, at, readings.temperatureC[index], Number.isNaN(humidity) ? null : humidity);
      });
      bulk.prepare(`UPDATE "Store" SET "climateVersion" = "climateVersion" + 1 WHERE "id" = ?`).run(storeId);
    })();
  });
}
