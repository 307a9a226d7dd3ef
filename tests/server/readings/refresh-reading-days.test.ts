import { expect, it } from 'vitest';
import { connections } from '@/lib/server/database/connections';
import { refreshReadingDays } from '@/lib/server/readings/refresh-reading-days';
import { makeStore } from '@/tests/support/create-store';
import { importLoggerText, loggerText, readingDaysOf } from '@/tests/support/logger-text';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank();

it('adds up each UTC day for itself, as the database would over all readings', async () => {
  const store = await makeStore();
  const temperatures = Array.from({ length: 24 * 400 }, (_, hour) => Math.round(50 * Math.sin(hour / 7)) / 10);
  await importLoggerText(store.id, loggerText('2025-01-01T05:00Z', temperatures));
  const { bulk } = connections();
  const expected = bulk
    .prepare(
      `SELECT "storeId", CAST(floor("atEpochSeconds" / 86400.0) AS INTEGER) AS "epochDay", COUNT(*) AS "readings",
         MIN("temperatureC") AS "lowestTemperatureC", AVG("temperatureC") AS "meanTemperatureC",
         MAX("temperatureC") AS "highestTemperatureC", COUNT("relativeHumidity") AS "humidityReadings",
         MIN("relativeHumidity") AS "lowestHumidity", AVG("relativeHumidity") AS "meanHumidity",
         MAX("relativeHumidity") AS "highestHumidity"
       FROM "Reading" WHERE "storeId" = ? GROUP BY 1, 2 ORDER BY 2`,
    )
    .all(store.id);
  expect(expected).toHaveLength(401);
  expect(readingDaysOf(store.id)).toEqual(expected);
});

it('touches no day outside the stretch', async () => {
  const store = await makeStore();
  await importLoggerText(store.id, loggerText('2026-03-01T12:00Z', [1, 2, 3], { everySeconds: 86_400 }));
  const { bulk } = connections();
  bulk.prepare(`UPDATE "ReadingDay" SET "readings" = 99 WHERE "storeId" = ?`).run(store.id);
  const middle = Date.UTC(2026, 2, 2, 23, 59, 59) / 1000;
  await refreshReadingDays(bulk, store.id, middle, middle);
  expect(readingDaysOf(store.id).map(({ readings }) => readings)).toEqual([99, 1, 99]);
});
