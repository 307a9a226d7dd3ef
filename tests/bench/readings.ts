/**
 * How fast a logger's file of half a million rows is imported by the real command, against the least that could be done:
 * a bare parse of the same file, and a bare insert of the same rows. Each is measured several times in turn in one
 * process, and the best counts, because a busy machine only ever makes things slower.
 * DATA_DIR: an empty folder. Prints one line of JSON, a ReadingFigures.
 */
import { mkdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import Database from 'better-sqlite3';
import { createStore } from '../../lib/server/commands/create-store';
import { importReadings } from '../../lib/server/commands/import-readings';
import { takeBackReadings } from '../../lib/server/commands/take-back-readings';
import { uploadReadings } from '../../lib/server/commands/upload-readings';
import { closeConnections, connections } from '../../lib/server/database/connections';
import { migrate } from '../../lib/server/database/migrate';
import { databaseFile } from '../../lib/server/env';
import { readLoggerFile } from '../../lib/server/readings/read-logger-file';
import { DEMO_PERSON } from '../../seed-demo/demo-person';
import { randomFor } from '../../seed-demo/random';

/** Seconds as the clock shows them, and of processor time, which a busy machine does not stretch: the best of several. */
interface Timing {
  seconds: number;
  cpuSeconds: number;
}

export interface ReadingFigures {
  rows: number;
  megabytes: number;
  import: Timing;
  /** the same file once more: everything is there already */
  importAgain: Timing;
  /** of the import, the reading of the file alone */
  read: Timing;
  bareParse: Timing;
  bareInsert: Timing;
  /** the longest that anybody else had to wait for the server during an import, milliseconds */
  longestHoldUpMilliseconds: number;
  peakMemoryMegabytes: number;
}

const ROWS = 500_000;
const TIMES = 3;
const EVERY_SECONDS = 300;
const LAYOUT = {
  delimiter: 'semicolon',
  firstLine: 6,
  dateColumn: 1,
  timeColumn: 2,
  temperatureColumn: 3,
  humidityColumn: 4,
  dateOrder: 'day-month-year',
  temperatureUnit: 'C',
  zone: 'UTC+01:00',
} as const;
const two = (value: number) => String(value).padStart(2, '0');

/** As a logger in a cool room writes them: prose, a number for each row, date and time apart, decimal comma. */
function writeFile(): string {
  const random = randomFor('bench of readings');
  const lines = [
    'Data logger',
    'Serial number;100452',
    `Interval;${EVERY_SECONDS} s`,
    '',
    'No.;Date;Time;Temp °C;RH %',
  ];
  let temperature = 4;
  const start = Date.UTC(2021, 0, 1);
  for (let row = 0; row < ROWS; row += 1) {
    const at = new Date(start + row * EVERY_SECONDS * 1000);
    temperature += 0.2 * (4 - temperature) + 0.2 * random.normal();
    const date = `${two(at.getUTCDate())}.${two(at.getUTCMonth() + 1)}.${at.getUTCFullYear()}`;
    const time = `${two(at.getUTCHours())}:${two(at.getUTCMinutes())}:${two(at.getUTCSeconds())}`;
    const figures = [temperature, 45 + random.normal()].map((value) => value.toFixed(1).replace('.', ','));
    lines.push(`${row + 1};${date};${time};${figures.join(';')}`);
  }
  return `${lines.join('\r\n')}\r\n`;
}

interface BareRow {
  at: number;
  temperatureC: number;
  relativeHumidity: number;
}

/** The least: lines, cells, numbers. It checks nothing and knows no zone. */
function bareParse(bytes: Uint8Array): BareRow[] {
  const rows: BareRow[] = [];
  for (const line of new TextDecoder().decode(bytes).split('\r\n').slice(5)) {
    const [, date, time, temperature, humidity] = line.split(';');
    if (!date || !time || !temperature || !humidity) continue;
    const [day, month, year] = date.split('.').map(Number);
    const [hour, minute, second] = time.split(':').map(Number);
    rows.push({
      at: Date.UTC(year ?? 0, (month ?? 1) - 1, day, hour, minute, second) / 1000 - 3600,
      temperatureC: Number(temperature.replace(',', '.')),
      relativeHumidity: Number(humidity.replace(',', '.')) / 100,
    });
  }
  return rows;
}

/** The least: one prepared statement, one transaction, the same table in a database of its own, no foreign keys, no index beside it. */
async function bareInsert(rows: readonly BareRow[], folder: string): Promise<Timing> {
  mkdirSync(folder, { recursive: true });
  const database = new Database(path.join(folder, 'bare.db'));
  database.pragma('journal_mode = WAL');
  database.pragma('synchronous = FULL');
  database.pragma('foreign_keys = OFF');
  const { sql } = connections().bulk.prepare(`SELECT "sql" FROM sqlite_master WHERE "name" = 'Reading'`).get() as {
    sql: string;
  };
  database.exec(sql);
  const insert = database.prepare(
    `INSERT INTO "Reading" ("storeId", "importId", "atEpochSeconds", "temperatureC", "relativeHumidity") VALUES (?, ?, ?, ?, ?)`,
  );
  const writeAll = database.transaction(() => {
    for (const row of rows)
      insert.run('0192f000-0000-7000-8000-000000000000', 1, row.at, row.temperatureC, row.relativeHumidity);
  });
  const taken = await timing(writeAll);
  database.close();
  rmSync(folder, { recursive: true, force: true });
  return taken;
}

async function timing(work: () => unknown): Promise<Timing> {
  const startedAt = performance.now();
  const cpuBefore = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(cpuBefore);
  return { seconds: (performance.now() - startedAt) / 1000, cpuSeconds: (user + system) / 1e6 };
}

/** @returns ends the watch and gives the longest time that a timer came late, milliseconds */
function watchHoldUps(): () => number {
  let longest = 0;
  let beat = performance.now();
  const timer = setInterval(() => {
    longest = Math.max(longest, performance.now() - beat - 1);
    beat = performance.now();
  }, 1);
  return () => {
    clearInterval(timer);
    return longest;
  };
}

const upload = async (storeId: string, bytes: Uint8Array) =>
  (await uploadReadings(DEMO_PERSON, { storeId, fileName: 'cool-room.csv', bytes })).id;

async function measure(): Promise<ReadingFigures> {
  await migrate(databaseFile(), path.resolve('prisma/migrations'));
  const store = await createStore(DEMO_PERSON, { name: 'Cool room', kind: 'room', targetTemperatureC: '4' });
  const bytes = new TextEncoder().encode(writeFile());
  const scratch = path.join(path.dirname(databaseFile()), 'bare');
  const taken = {
    bulk: [] as Timing[],
    again: [] as Timing[],
    read: [] as Timing[],
    parse: [] as Timing[],
    insert: [] as Timing[],
  };
  let longestHoldUp = 0;
  for (let time = 0; time < TIMES; time += 1) {
    let rows: BareRow[] = [];
    taken.parse.push(
      await timing(() => {
        rows = bareParse(bytes);
      }),
    );
    taken.insert.push(await bareInsert(rows, scratch));
    rows = [];
    taken.read.push(await timing(() => readLoggerFile(bytes, { ...LAYOUT, delimiter: ';' })));
    const importId = await upload(store.id, bytes);
    const waited = watchHoldUps();
    taken.bulk.push(await timing(() => importReadings(DEMO_PERSON, { importId, ...LAYOUT })));
    longestHoldUp = Math.max(longestHoldUp, waited());
    const again = await upload(store.id, bytes);
    taken.again.push(await timing(() => importReadings(DEMO_PERSON, { importId: again, ...LAYOUT })));
    const imported = connections().bulk.prepare(`SELECT COUNT(*) AS n FROM "Reading" WHERE NOT "takenBack"`).get() as {
      n: number;
    };
    if (imported.n !== ROWS) throw new Error(`imported ${imported.n} of ${ROWS} rows`);
    await takeBackReadings(DEMO_PERSON, { importId });
  }
  await closeConnections();
  const best = (list: readonly Timing[]): Timing => ({
    seconds: Math.min(...list.map(({ seconds }) => seconds)),
    cpuSeconds: Math.min(...list.map(({ cpuSeconds }) => cpuSeconds)),
  });
  return {
    rows: ROWS,
    megabytes: bytes.length / 1e6,
    import: best(taken.bulk),
    importAgain: best(taken.again),
    read: best(taken.read),
    bareParse: best(taken.parse),
    bareInsert: best(taken.insert),
    longestHoldUpMilliseconds: longestHoldUp,
    peakMemoryMegabytes: process.resourceUsage().maxRSS / 1024,
  };
}

process.stdout.write(`${JSON.stringify(await measure())}\n`);
