import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { migrate } from '@/lib/server/database/migrate';

const MIGRATIONS = path.resolve('prisma/migrations');
const OLDER = ['20261125090000_the_collection', '20261125150000_storage_experiments'];
const HOURS = 5000;
let directory: string;
let database: Database.Database;

beforeAll(async () => {
  directory = mkdtempSync(path.join(tmpdir(), 'hilum-older-'));
  const file = path.join(directory, 'hilum.db');
  for (const name of OLDER)
    cpSync(path.join(MIGRATIONS, name), path.join(directory, 'older', name), { recursive: true });
  await migrate(file, path.join(directory, 'older'));
  const older = new Database(file);
  older.exec(`INSERT INTO "Store" ("id", "name", "kind", "targetTemperatureC") VALUES ('s', 'Fridge', 'fridge', 4);
    INSERT INTO "Store" ("id", "name", "kind", "parentId", "targetTemperatureC") VALUES ('b', 'Box', 'box', 's', 4)`);
  const reading = older.prepare(
    `INSERT INTO "Reading" ("storeId", "atEpochSeconds", "temperatureC", "relativeHumidity") VALUES ('s', ?, ?, ?)`,
  );
  older.transaction(() => {
    for (let hour = -10; hour < HOURS - 10; hour += 1) reading.run(hour * 3600, hour / 100, hour % 3 ? 0.4 : null);
  })();
  older.close();
  await migrate(file, MIGRATIONS);
  database = new Database(file);
});
afterAll(() => {
  database.close();
  rmSync(directory, { recursive: true, force: true });
});

it('keeps every reading of a bank from before imports were kept, with the sums of its days', () => {
  const sums = (sql: string) => database.prepare(sql).raw().get();
  const total = Array.from({ length: HOURS }, (_, index) => (index - 10) / 100).reduce((sum, value) => sum + value, 0);
  expect(sums(`SELECT COUNT(*), COUNT("relativeHumidity"), SUM("takenBack") FROM "Reading"`)).toEqual([HOURS, 3333, 0]);
  expect(database.prepare(`SELECT SUM("temperatureC") FROM "Reading"`).pluck().get()).toBeCloseTo(total, 6);
  expect(sums(`SELECT SUM("readings"), SUM("humidityReadings") FROM "ReadingDay"`)).toEqual([HOURS, 3333]);
  // Ten hours lie before 1970: they belong to the day before, not to day 0.
  expect(sums(`SELECT "epochDay", "readings", "lowestTemperatureC" FROM "ReadingDay" ORDER BY 1`)).toEqual([
    -1, 10, -0.1,
  ]);
});

it('gives every store a phase from before any seed was in it', () => {
  const phases = database.prepare(`SELECT "storeId", "from", "parentId", "targetTemperatureC" FROM "StorePhase"`).raw();
  expect(phases.all()).toEqual([
    ['s', '0001-01-01', null, 4],
    ['b', '0001-01-01', 's', 4],
  ]);
});

it('lets a reading be taken back once, and nothing else happen to it', () => {
  const run = (sql: string) => database.prepare(sql).run().changes;
  expect(() => run(`UPDATE "Reading" SET "temperatureC" = 9`)).toThrow('append-only');
  expect(() => run(`DELETE FROM "Reading"`)).toThrow('append-only');
  expect(run(`UPDATE "Reading" SET "takenBack" = 1 WHERE "atEpochSeconds" = 0`)).toBe(1);
  expect(() => run(`UPDATE "Reading" SET "takenBack" = 0 WHERE "atEpochSeconds" = 0`)).toThrow('append-only');
  expect(() => run(`DELETE FROM "StorePhase"`)).toThrow('append-only');
});
