import type Database from 'better-sqlite3';

const SECONDS_PER_DAY = 86_400;
/** Days added up before the server looks after other visitors again: with a reading every five minutes, 18,000 rows. */
const DAYS_AT_A_TIME = 62;

/**
 * Makes the daily sums of a store's readings anew, for the UTC days that a stretch of time touches. Belongs into the
 * transaction that adds readings or takes them back.
 *
 * @param bulk    the connection that writes
 * @param fromEpochSeconds, toEpochSeconds  first and last instant that came or went
 * @param giveWay  called between months of days, so that a long stretch does not hold the server up
 * Checked in tests/server/readings/refresh-reading-days.test.ts
 */
export async function refreshReadingDays(
  bulk: Database.Database,
  storeId: string,
  fromEpochSeconds: number,
  toEpochSeconds: number,
  giveWay: () => Promise<void> = async () => undefined,
): Promise<void> {
  const drop = bulk.prepare(`DELETE FROM "ReadingDay" WHERE "storeId" = ? AND "epochDay" BETWEEN ? AND ?`);
  const add = bulk.prepare(
    `INSERT INTO "ReadingDay" ("storeId", "epochDay", "readings", "lowestTemperatureC", "meanTemperatureC", "highestTemperatureC",
       "humidityReadings", "lowestHumidity", "meanHumidity", "highestHumidity")
     SELECT "storeId", "atEpochSeconds" / ${SECONDS_PER_DAY} AS "day", COUNT(*), MIN("temperatureC"), AVG("temperatureC"),
       MAX("temperatureC"), COUNT("relativeHumidity"), MIN("relativeHumidity"), AVG("relativeHumidity"), MAX("relativeHumidity")
     FROM "Reading" WHERE "storeId" = ? AND "atEpochSeconds" >= ? AND "atEpochSeconds" < ? AND NOT "takenBack"
     GROUP BY "storeId", "day"`,
  );
  const lastDay = Math.floor(toEpochSeconds / SECONDS_PER_DAY);
  for (let day = Math.floor(fromEpochSeconds / SECONDS_PER_DAY); day <= lastDay; day += DAYS_AT_A_TIME) {
    const end = Math.min(lastDay, day + DAYS_AT_A_TIME - 1);
    drop.run(storeId, day, end);
    add.run(storeId, day * SECONDS_PER_DAY, (end + 1) * SECONDS_PER_DAY);
    await giveWay();
  }
}
