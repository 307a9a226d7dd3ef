import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { addDays } from '@/lib/domain/calendar/calendar-date';
import type { ImportKind } from '@/lib/schemas/import/fields';
import { closeConnections } from '@/lib/server/database/connections';
import { randomFor } from '@/seed-demo/random';
import { uploadText } from '@/tests/support/import-file';
import { complaintsAbout } from '@/tests/support/safety/bank-agrees';
import { useBundledChild } from '@/tests/support/safety/bundle-child';
import { fillBusyBank } from '@/tests/support/safety/busy-bank';
import { type Child, spin, startChild } from '@/tests/support/safety/child';
import { judgementsFromScratch } from '@/tests/support/safety/judgements-agree';
import { useTestBank } from '@/tests/support/test-bank';

/** How often; more with HILUM_KILLS=1000. */
const KILLS = Number(process.env.HILUM_KILLS ?? 100);
const STREAM = process.env.HILUM_KILL_STREAM ?? 'imports';
const TODAY = '2026-11-25';
const ROWS = 150;

const bank = useTestBank({ today: TODAY });
const program = useBundledChild('import-in-child.ts');
const chance = randomFor(`killing ${STREAM}`);

type Upload = Awaited<ReturnType<typeof uploadText>> & { kind: ImportKind };
const KINDS = ['lots', 'germination tests'] as const;
type Kind = (typeof KINDS)[number];
const made: Record<Kind, number> = { lots: 0, 'germination tests': 0 };
const waiting: Record<Kind, Upload | null> = { lots: null, 'germination tests': null };

/** The next spreadsheet of a kind that was not imported yet; tests are of lots that are in the bank already. */
async function waitingUpload(kind: Kind): Promise<Upload> {
  const known = waiting[kind];
  if (known) return known;
  made[kind] += 1;
  const rows = Array.from({ length: ROWS }, (_, index) =>
    kind === 'lots'
      ? `K-${made.lots}-${index};A-000${1 + (index % 4)};2018-09-10;cage;2018-10-01;${500 + index};glass jar;7`
      : `L-2019-00${1 + (index % 8)};${addDays('2022-01-01', (made[kind] * 19 + Math.floor(index / 8)) % 1700)};50;${30 + (index % 19)}`,
  );
  const head =
    kind === 'lots'
      ? 'Lot;Accession;Harvest;Isolation;Packed on;Seeds;Container;MC %'
      : 'Lot;Date tested;Seeds sown;Germinated';
  const upload = { ...(await uploadText(kind, [head, ...rows].join('\n'))), kind };
  await closeConnections();
  waiting[kind] = upload;
  return upload;
}

const start = ({ importId, columns }: Upload) =>
  startChild(program.file, { dataDirectory: bank.directory, args: [importId, JSON.stringify(columns)] });

/** How long an import took so far, milliseconds. */
const usualMs: Record<Kind, number> = { lots: 0, 'germination tests': 0 };

async function importToTheEnd(kind: Kind): Promise<void> {
  const child = start(await waitingUpload(kind));
  child.go();
  usualMs[kind] = Number((await child.until(({ word }) => word === 'ack')).rest);
  waiting[kind] = null;
  await child.ended();
}

/** Whether it said that it was done, and whether it was killed in the middle of a transaction. */
async function killAtRandom(child: Child, kind: Kind) {
  child.go();
  await child.until(({ word }) => word === 'begin');
  await spin(chance.between(0, 1.1) * usualMs[kind]);
  const { midTransaction } = await child.kill();
  const failed = child.lines.find(({ word }) => word === 'failed');
  if (failed) throw new Error(failed.rest);
  return { midTransaction, acknowledged: child.lines.some(({ word }) => word === 'ack') };
}

it(
  `brings in all of a spreadsheet or nothing when the process is killed, ${KILLS} times`,
  async () => {
    await fillBusyBank();
    for (const kind of KINDS) await importToTheEnd(kind);
    const seen = { midTransaction: 0, before: 0, unacknowledged: 0, acknowledged: 0, judgedLater: 0 };
    for (let kill = 1; kill <= KILLS; kill += 1) {
      const kind = chance.pick(KINDS);
      const upload = await waitingUpload(kind);
      const { midTransaction, acknowledged } = await killAtRandom(start(upload), kind);

      const database = new Database(bank.file);
      expect(complaintsAbout(database), `after kill ${kill}`).toEqual([]);
      const status = database
        .prepare<[string], string>(`SELECT "status" FROM "ImportJob" WHERE "id" = ?`)
        .pluck()
        .get(upload.importId);
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
    }
    console.info(`killed-mid-import ${JSON.stringify({ kills: KILLS, ...seen })}`);
    expect(seen.midTransaction).toBeGreaterThan(KILLS / 5);
  },
  60_000 + KILLS * 6_000,
);
