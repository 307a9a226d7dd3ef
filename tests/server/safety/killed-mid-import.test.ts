import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { addDays } from '@/lib/domain/calendar/calendar-date';
import { closeConnections, connections } from '@/lib/server/database/connections';
import { randomFor } from '@/seed-demo/random';
import { uploadText } from '@/tests/support/import-file';
import { LOGGER_TEXT_LAYOUT, loggerText, uploadLoggerText } from '@/tests/support/logger-text';
import { complaintsAbout } from '@/tests/support/safety/bank-agrees';
import { useBundledChild } from '@/tests/support/safety/bundle-child';
import { fillBusyBank } from '@/tests/support/safety/busy-bank';
import { type Child, type Line, spin, startChild, untilWriteLocked } from '@/tests/support/safety/child';
import { judgementsFromScratch } from '@/tests/support/safety/judgements-agree';
import { useTestBank } from '@/tests/support/test-bank';

/** How often; more with HILUM_KILLS=1000. */
const KILLS = Number(process.env.HILUM_KILLS ?? 100);
const STREAM = process.env.HILUM_KILL_STREAM ?? 'imports';
const TODAY = '2026-11-25';
const ROWS = 150;
const READINGS = 6000;

const bank = useTestBank({ today: TODAY });
const program = useBundledChild('import-in-child.ts');
const chance = randomFor(`killing ${STREAM}`);

/** A file that waits to be imported: what the command takes, and where its status stands. */
interface Waiting {
  input: { importId: string | number };
  statusIn: 'ImportJob' | 'ReadingImport';
}

const KINDS = ['lots', 'germination tests', 'readings'] as const;
type Kind = (typeof KINDS)[number];
const made: Record<Kind, number> = { lots: 0, 'germination tests': 0, readings: 0 };
const waiting: Record<Kind, Waiting | null> = { lots: null, 'germination tests': null, readings: null };

/** The next file of a kind that was not imported yet. */
async function waitingFile(kind: Kind): Promise<Waiting> {
  const known = waiting[kind];
  if (known) return known;
  made[kind] += 1;
  const next: Waiting =
    kind === 'readings'
      ? { input: await uploadReadings(made.readings), statusIn: 'ReadingImport' }
      : { input: await uploadSpreadsheet(kind, made[kind]), statusIn: 'ImportJob' };
  await closeConnections();
  waiting[kind] = next;
  return next;
}

/** Lots of their own, or tests of lots that are in the bank already. */
async function uploadSpreadsheet(kind: 'lots' | 'germination tests', count: number) {
  const rows = Array.from({ length: ROWS }, (_, index) =>
    kind === 'lots'
      ? `K-${count}-${index};A-000${1 + (index % 4)};2018-09-10;cage;2018-10-01;${500 + index};glass jar;7`
      : `L-2019-00${1 + (index % 8)};${addDays('2022-01-01', (count * 19 + Math.floor(index / 8)) % 1700)};50;${30 + (index % 19)}`,
  );
  const head =
    kind === 'lots'
      ? 'Lot;Accession;Harvest;Isolation;Packed on;Seeds;Container;MC %'
      : 'Lot;Date tested;Seeds sown;Germinated';
  return { ...(await uploadText(kind, [head, ...rows].join('\n'))), createNames: 'on' };
}

/** Six weeks of a store in which lots lie, a reading in ten minutes; never twice the same instants. */
async function uploadReadings(count: number) {
  const day = addDays('2020-01-01', (count * 42) % 2400);
  const temperatures = Array.from({ length: READINGS }, (_, index) => 4 + ((index * 7 + count) % 50) / 10);
  const text = loggerText(`${day}T00:00:${String(count % 60).padStart(2, '0')}Z`, temperatures, { everySeconds: 600 });
  const storeId = connections()
    .rows.prepare<[], string>(`SELECT "id" FROM "Store" WHERE "kind" = 'fridge'`)
    .pluck()
    .get();
  return { importId: await uploadLoggerText(String(storeId), text), ...LOGGER_TEXT_LAYOUT };
}

const start = (kind: Kind, { input }: Waiting) =>
  startChild(program.file, {
    dataDirectory: bank.directory,
    args: [kind === 'readings' ? 'readings' : 'spreadsheet', JSON.stringify(input)],
  });

/** How long an import took, milliseconds: the last one, and the fastest, which a machine that does other things outlasts. */
const lastMs: Record<Kind, number> = { lots: 0, 'germination tests': 0, readings: 0 };
const fastestMs: Record<Kind, number> = { lots: Infinity, 'germination tests': Infinity, readings: Infinity };

function noteDuration(kind: Kind, { rest }: Line): void {
  lastMs[kind] = Number(rest);
  fastestMs[kind] = Math.min(fastestMs[kind], Number(rest));
}

async function importToTheEnd(kind: Kind): Promise<void> {
  const child = start(kind, await waitingFile(kind));
  child.go();
  noteDuration(kind, await child.until(({ word }) => word === 'ack'));
  waiting[kind] = null;
  await child.ended();
}

/** Whether it said that it was done, and whether it was killed in the middle of a transaction. */
async function killAtRandom(child: Child, kind: Kind) {
  child.go();
  await child.until(({ word }) => word === 'begin');
  // Most strike while it writes, wherever that is; the others anywhere from reading the file to judging the lots.
  const aimed = chance.fraction() < 0.6;
  if (aimed) await untilWriteLocked(child, bank.file);
  await spin(aimed ? chance.between(0, 0.6) * fastestMs[kind] : chance.between(0, 1.1) * lastMs[kind]);
  const { midTransaction } = await child.kill();
  const failed = child.lines.find(({ word }) => word === 'failed');
  if (failed) throw new Error(failed.rest);
  const acknowledgement = child.lines.find(({ word }) => word === 'ack');
  if (acknowledgement) noteDuration(kind, acknowledgement);
  return { midTransaction, acknowledged: acknowledgement !== undefined };
}

it(
  `brings in all of a spreadsheet or a logger's file, or nothing, when the process is killed, ${KILLS} times`,
  async () => {
    await fillBusyBank();
    for (const kind of KINDS) await importToTheEnd(kind);
    const seen = { midTransaction: 0, before: 0, unacknowledged: 0, acknowledged: 0, judgedLater: 0 };
    for (let kill = 1; kill <= KILLS; kill += 1) {
      const kind = chance.pick(KINDS);
      const file = await waitingFile(kind);
      const { midTransaction, acknowledged } = await killAtRandom(start(kind, file), kind);

      const database = new Database(bank.file);
      expect(complaintsAbout(database), `after kill ${kill}`).toEqual([]);
      const status = database
        .prepare<[string | number], string>(`SELECT "status" FROM "${file.statusIn}" WHERE "id" = ?`)
        .pluck()
        .get(file.input.importId);
      if (acknowledged) expect(status, `kill ${kill} lost what was acknowledged`).toBe('imported');
      if (status === 'imported') {
        waiting[kind] = null;
        const judged = await judgementsFromScratch(database, TODAY);
        expect(judged.kept, `kill ${kill} left a judgement that is wrong and not marked`).toEqual(judged.fresh);
        if (judged.stale > 0) seen.judgedLater += 1;
      }
      database.close();
      if (midTransaction) seen.midTransaction += 1;
      else if (status !== 'imported') seen.before += 1;
      else if (acknowledged) seen.acknowledged += 1;
      else seen.unacknowledged += 1;
      if (kill % 50 === 0 || kill === KILLS)
        console.info(`killed-mid-import ${JSON.stringify({ kills: kill, ...seen })}`);
    }
    expect(seen.midTransaction).toBeGreaterThan(KILLS / 5);
  },
  60_000 + KILLS * 6_000,
);
