import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readingReportSchema } from '@/lib/schemas/reading-import';
import { importReadings } from '@/lib/server/commands/import-readings';
import { connections, reader } from '@/lib/server/database/connections';
import { countRows, lastAuditLine } from '@/tests/support/audit';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import {
  climateVersionOf,
  importLoggerText,
  LOGGER_TEXT_LAYOUT,
  loggerText,
  readingDaysOf,
  readingsOf,
  uploadLoggerText,
} from '@/tests/support/logger-text';
import { medianOf } from '@/tests/support/lot-judgement';
import { STEWARD } from '@/tests/support/people';
import { refusal as refusalOf } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank();

describe('importing a logger file', () => {
  it('puts its readings into the store, with their daily sums, an audit line and a report', async () => {
    const store = await makeStore();
    const outcome = await importLoggerText(store.id, loggerText('2026-03-01T22:00Z', [4, 5, 6.5]));
    expect(outcome).toMatchObject({ added: 3, alreadyThere: 0 });
    const start = Date.UTC(2026, 2, 1, 22) / 1000;
    expect(readingsOf(store.id)).toEqual([
      { atEpochSeconds: start, temperatureC: 4, relativeHumidity: 0.4 },
      { atEpochSeconds: start + 3600, temperatureC: 5, relativeHumidity: 0.4 },
      { atEpochSeconds: start + 7200, temperatureC: 6.5, relativeHumidity: 0.4 },
    ]);
    expect(readingDaysOf(store.id)).toMatchObject([
      { readings: 2, lowestTemperatureC: 4, meanTemperatureC: 4.5, highestTemperatureC: 5, humidityReadings: 2 },
      { readings: 1, lowestTemperatureC: 6.5, meanTemperatureC: 6.5, highestTemperatureC: 6.5, humidityReadings: 1 },
    ]);
    expect(lastAuditLine()?.summary).toBe(`Imported 3 readings of store ${store.name} from logger.csv`);
    const { report } = await reader().readingImport.findUniqueOrThrow({ where: { id: outcome.importId } });
    expect(readingReportSchema.parse(JSON.parse(report ?? ''))).toMatchObject({
      rows: 3,
      readings: 3,
      firstAt: start,
      lastAt: start + 7200,
      usualIntervalSeconds: 3600,
      added: 3,
    });
    expect(climateVersionOf(store.id)).toBe(1);
  });

  it('changes nothing the second time, and says so', async () => {
    const store = await makeStore();
    const text = loggerText('2026-03-01T00:00Z', [4, 4.5, 5]);
    await importLoggerText(store.id, text);
    const before = {
      readings: readingsOf(store.id),
      days: readingDaysOf(store.id),
      version: climateVersionOf(store.id),
    };
    expect(await importLoggerText(store.id, text)).toMatchObject({ added: 0, alreadyThere: 3, saidOtherwise: 0 });
    expect({
      readings: readingsOf(store.id),
      days: readingDaysOf(store.id),
      version: climateVersionOf(store.id),
    }).toEqual(before);
    expect(lastAuditLine()?.summary).toContain('all its readings were there already');
  });

  it('adds of an overlapping file what is new, and keeps what was there', async () => {
    const store = await makeStore();
    await importLoggerText(store.id, loggerText('2026-03-01T00:00Z', [1, 2, 3]));
    const outcome = await importLoggerText(store.id, loggerText('2026-03-01T01:00Z', [9, 3, 4, 5]));
    expect(outcome).toMatchObject({ added: 2, alreadyThere: 2, saidOtherwise: 1 });
    expect(readingsOf(store.id).map(({ temperatureC }) => temperatureC)).toEqual([1, 2, 3, 4, 5]);
    expect(readingDaysOf(store.id)).toMatchObject([{ readings: 5, meanTemperatureC: 3 }]);
  });

  it('any files in any order, each as often as you like, give what their first readings give', async () => {
    const file = fc.record({
      start: fc.nat(12),
      temperatures: fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 2, maxLength: 8 }),
    });
    await fc.assert(
      fc.asyncProperty(
        fc.array(file, { minLength: 1, maxLength: 3 }),
        fc.array(fc.nat(2), { maxLength: 3 }),
        async (files, again) => {
          const store = await makeStore();
          const expected = new Map<number, number>();
          for (const index of [...files.keys(), ...again]) {
            const chosen = files[index % files.length];
            if (!chosen) continue;
            const from = Date.UTC(2026, 2, 1, chosen.start);
            await importLoggerText(store.id, loggerText(new Date(from).toISOString(), chosen.temperatures));
            for (const [hour, temperature] of chosen.temperatures.entries()) {
              const at = from / 1000 + hour * 3600;
              if (!expected.has(at)) expected.set(at, temperature);
            }
          }
          expect(
            readingsOf(store.id).map(({ atEpochSeconds, temperatureC }) => [atEpochSeconds, temperatureC]),
          ).toEqual([...expected].sort(([a], [b]) => a - b));
          const [sums] = readingDaysOf(store.id);
          expect(sums?.readings).toBe([...expected.keys()].filter((at) => at < Date.UTC(2026, 2, 2) / 1000).length);
        },
      ),
      { numRuns: 15, seed: 4 },
    );
  });

  it('reads with the layout that was chosen, not with the one that was guessed', async () => {
    const store = await makeStore();
    await importLoggerText(store.id, loggerText('2026-03-01T00:00Z', [41, 50, 59]), {
      temperatureUnit: 'F',
      humidityColumn: '',
    });
    expect(readingsOf(store.id).map(({ temperatureC, relativeHumidity }) => [temperatureC, relativeHumidity])).toEqual([
      [5, null],
      [10, null],
      [15, null],
    ]);
  });

  it('takes all or nothing when something fails on the way', async () => {
    const store = await makeStore();
    const importId = await uploadLoggerText(
      store.id,
      loggerText(
        '2026-03-01T00:00Z',
        Array.from({ length: 120 }, (_, hour) => hour / 10),
      ),
    );
    const { bulk } = connections();
    bulk.exec(
      `CREATE TEMP TRIGGER stumble BEFORE INSERT ON "Reading" WHEN NEW."temperatureC" = 11.5 BEGIN SELECT RAISE(ABORT, 'stumble'); END`,
    );
    const audited = countRows('AuditEntry');
    await expect(importReadings(STEWARD, { importId, ...LOGGER_TEXT_LAYOUT })).rejects.toThrow('stumble');
    bulk.exec('DROP TRIGGER stumble');
    expect(readingsOf(store.id)).toEqual([]);
    expect(readingDaysOf(store.id)).toEqual([]);
    expect(climateVersionOf(store.id)).toBe(0);
    expect(countRows('AuditEntry')).toBe(audited);
    expect(await importReadings(STEWARD, { importId, ...LOGGER_TEXT_LAYOUT })).toMatchObject({ added: 120 });
  });

  it('takes a file once, also when the button is pressed twice at once', async () => {
    const store = await makeStore();
    const importId = await uploadLoggerText(store.id, loggerText('2026-03-01T00:00Z', [4, 5]));
    const input = { importId, ...LOGGER_TEXT_LAYOUT };
    const both = await Promise.allSettled([importReadings(STEWARD, input), importReadings(STEWARD, input)]);
    expect(both.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    expect(readingsOf(store.id)).toHaveLength(2);
  });

  it('refuses a file with readings in the future, naming the line, and adds none of it', async () => {
    const store = await makeStore();
    const text = loggerText('2026-11-25T22:00Z', [4, 5, 6, 7]);
    const importId = await uploadLoggerText(store.id, text);
    const refusal = await refusalOf(importReadings(STEWARD, { importId, ...LOGGER_TEXT_LAYOUT }));
    expect(refusal.userMessage).toMatch(
      /Nothing was imported\. 1 readings lie in the future \(line 5: 2026-11-26T01:00:00Z/,
    );
    expect(readingsOf(store.id)).toEqual([]);
  });

  it('asks for the zone when the file has none, beside its field', async () => {
    const store = await makeStore();
    const importId = await uploadLoggerText(store.id, loggerText('2026-03-01T00:00Z', [4, 5]));
    const refusal = await refusalOf(
      importReadings(STEWARD, { importId, ...LOGGER_TEXT_LAYOUT, zone: '', dateOrder: '' }),
    );
    expect(refusal.fieldErrors).toEqual({
      zone: "Choose the time zone of the logger's clock.",
      dateOrder: 'Choose the order of day and month.',
    });
  });

  it('judges anew the lots that lie in the store, or in one inside it', async () => {
    const fridge = await makeStore({ targetTemperatureC: '4' });
    const shelf = await makeStore({ parentId: fridge.id, targetTemperatureC: '4' });
    const elsewhere = await makeStore({ targetTemperatureC: '4' });
    const placed = { harvestedOn: '2020-09-20', storedOn: '2020-10-05' };
    const inside = await makeLot({ ...placed, storeId: shelf.id });
    const outside = await makeLot({ ...placed, storeId: elsewhere.id });
    const before = { inside: await medianOf(inside.number), outside: await medianOf(outside.number) };
    // Two years at 30 degrees, a reading every six hours.
    const hot = loggerText('2022-01-01T00:00Z', new Array(2920).fill(30), { everySeconds: 6 * 3600 });
    await importLoggerText(fridge.id, hot);
    expect(await medianOf(inside.number)).toBeLessThan((before.inside ?? 0) - 0.1);
    expect(await medianOf(outside.number)).toBe(before.outside);
  });
});
