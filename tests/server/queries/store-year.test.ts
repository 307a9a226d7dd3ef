import { expect, it } from 'vitest';
import { toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { connections } from '@/lib/server/database/connections';
import { getStoreYear } from '@/lib/server/queries/store-year';
import { makeStore } from '@/tests/support/create-store';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ today: '2026-11-25' });

const barley = { CH: 0.04, CQ: 0.000428 };

it('has nothing to say of a store without readings', async () => {
  const { id } = await makeStore();
  expect(getStoreYear(id, barley)).toBeNull();
});

it('takes readings of the last year, and the target for the days before them', async () => {
  const { id } = await makeStore({ targetTemperatureC: '4' });
  const { bulk } = connections();
  const insert = bulk.prepare(`INSERT INTO "Reading" ("storeId", "atEpochSeconds", "temperatureC") VALUES (?, ?, ?)`);
  const today = toEpochDay('2026-11-25');
  for (let day = today - 100; day <= today; day += 1) insert.run(id, day * 86_400, 12);
  bulk.prepare(`UPDATE "Store" SET "climateVersion" = 1 WHERE "id" = ?`).run(id);
  const year = getStoreYear(id, barley);
  expect(year?.daysRead).toBe(100);
  const factor = (t: number) => 10 ** (barley.CH * t + barley.CQ * t * t);
  const mean = (100 * factor(12) + 265 * factor(4)) / 365;
  expect(Math.abs(factor(year?.temperatureC ?? 0) / mean - 1)).toBeLessThan(1e-9);
});

it('sees nothing of readings that are still being imported', async () => {
  const { id } = await makeStore();
  const { bulk } = connections();
  bulk.exec('BEGIN IMMEDIATE');
  const insert = bulk.prepare(`INSERT INTO "Reading" ("storeId", "atEpochSeconds", "temperatureC") VALUES (?, ?, 30)`);
  for (let day = toEpochDay('2026-10-01'); day < toEpochDay('2026-11-01'); day += 1) insert.run(id, day * 86_400);
  bulk.prepare(`UPDATE "Store" SET "climateVersion" = 1 WHERE "id" = ?`).run(id);
  const during = getStoreYear(id, barley);
  bulk.exec('ROLLBACK');
  expect(during).toBeNull();
  expect(getStoreYear(id, barley)).toBeNull();
});
