import { expect, it } from 'vitest';
import { importReadings } from '@/lib/server/commands/import-readings';
import { takeBackReadings } from '@/lib/server/commands/take-back-readings';
import { connections, reader } from '@/lib/server/database/connections';
import { lastAuditLine } from '@/tests/support/audit';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { climateVersionOf, importLoggerText, loggerText, readingDaysOf, readingsOf } from '@/tests/support/logger-text';
import { medianOf } from '@/tests/support/lot-judgement';
import { STEWARD } from '@/tests/support/people';
import { refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank();

const hotYears = loggerText('2022-01-01T00:00Z', new Array(2920).fill(30), { everySeconds: 6 * 3600 });

it('takes back what an import brought, and the lots are judged as if it had never been', async () => {
  const store = await makeStore();
  const lot = await makeLot({ storeId: store.id, harvestedOn: '2020-09-20', storedOn: '2020-10-05' });
  const before = await medianOf(lot.number);
  const { importId } = await importLoggerText(store.id, hotYears);
  expect(await medianOf(lot.number)).toBeLessThan(before - 0.1);
  expect(await takeBackReadings(STEWARD, { importId })).toEqual({ storeId: store.id, readings: 2920 });
  expect(readingsOf(store.id)).toEqual([]);
  expect(readingDaysOf(store.id)).toEqual([]);
  expect(await medianOf(lot.number)).toBe(before);
  expect(lastAuditLine()?.summary).toBe(`Took back 2920 readings of store ${store.name} that came with logger.csv`);
  // Marked, not deleted.
  const kept = await reader().reading.count({ where: { storeId: store.id, takenBack: true } });
  expect(kept).toBe(2920);
});

it('leaves what other imports brought, and lets a file come in again', async () => {
  const store = await makeStore();
  const first = await importLoggerText(store.id, loggerText('2026-03-01T00:00Z', [1, 2, 3]));
  const overlapping = loggerText('2026-03-01T02:00Z', [8, 4, 5]);
  await importLoggerText(store.id, overlapping);
  await takeBackReadings(STEWARD, { importId: first.importId });
  expect(readingsOf(store.id).map(({ temperatureC }) => temperatureC)).toEqual([4, 5]);
  // Its reading of 02:00 had stood back behind the first file's; now it has its place.
  expect(await importLoggerText(store.id, overlapping)).toMatchObject({ added: 1, alreadyThere: 2 });
  expect(await importLoggerText(store.id, loggerText('2026-03-01T00:00Z', [1, 2, 3]))).toMatchObject({ added: 2 });
  expect(readingsOf(store.id).map(({ temperatureC }) => temperatureC)).toEqual([1, 2, 8, 4, 5]);
  expect(readingDaysOf(store.id)).toMatchObject([{ readings: 5, meanTemperatureC: 4 }]);
});

it('a store without a reading left counts as not logged, and every change makes the version larger', async () => {
  const store = await makeStore();
  expect(climateVersionOf(store.id)).toBe(0);
  const { importId } = await importLoggerText(store.id, loggerText('2026-03-01T00:00Z', [1, 2]));
  expect(climateVersionOf(store.id)).toBe(1);
  await takeBackReadings(STEWARD, { importId });
  expect(climateVersionOf(store.id)).toBe(-2);
  await importLoggerText(store.id, loggerText('2026-03-01T00:00Z', [1, 2]));
  expect(climateVersionOf(store.id)).toBe(3);
});

it('takes nothing back twice, nothing that was not imported, and nothing that does not exist', async () => {
  const store = await makeStore();
  const { importId } = await importLoggerText(store.id, loggerText('2026-03-01T00:00Z', [1, 2]));
  await takeBackReadings(STEWARD, { importId });
  expect((await refusal(takeBackReadings(STEWARD, { importId }))).userMessage).toContain('already');
  expect((await refusal(takeBackReadings(STEWARD, { importId: 999_999 }))).code).toBe('not-found');
  expect((await refusal(importReadings(STEWARD, { importId }))).code).toBe('invalid-input');
});

it('the database refuses any other change of a reading', () => {
  const { bulk } = connections();
  expect(() => bulk.exec(`UPDATE "Reading" SET "temperatureC" = 0`)).toThrow('append-only');
  expect(() => bulk.exec(`UPDATE "Reading" SET "takenBack" = 0 WHERE "takenBack" = 1`)).toThrow('append-only');
  expect(() => bulk.exec(`DELETE FROM "Reading"`)).toThrow('append-only');
});
