import { connections } from '@/lib/server/database/connections';

/** Readings of a store as [epoch seconds, degrees C, humidity 0-1], with what the days add up to. */
export function logReadings(storeId: string, readings: readonly (readonly [number, number, (number | null)?])[]): void {
  const { bulk } = connections();
  const insert = bulk.prepare(
    `INSERT INTO "Reading" ("storeId", "atEpochSeconds", "temperatureC", "relativeHumidity") VALUES (?, ?, ?, ?)`,
  );
  bulk.transaction(() => {
    for (const [at, temperature, humidity = null] of readings) insert.run(storeId, at, temperature, humidity);
    bulk.prepare(`DELETE FROM "ReadingDay" WHERE "storeId" = ?`).run(storeId);
    // As the migration that made the table filled it.
    bulk
      .prepare(
        `INSERT INTO "ReadingDay"
         SELECT "storeId", CAST(floor("atEpochSeconds" / 86400.0) AS INTEGER), COUNT(*), MIN("temperatureC"), AVG("temperatureC"),
           MAX("temperatureC"), COUNT("relativeHumidity"), MIN("relativeHumidity"), AVG("relativeHumidity"), MAX("relativeHumidity")
         FROM "Reading" WHERE "storeId" = ? AND NOT "takenBack" GROUP BY 1, 2`,
      )
      .run(storeId);
    bulk.prepare(`UPDATE "Store" SET "climateVersion" = "climateVersion" + 1 WHERE "id" = ?`).run(storeId);
  })();
}
