import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { closeConnections, connections } from '@/lib/server/database/connections';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { complaintsAbout } from '@/tests/support/safety/bank-agrees';
import { useBundledChild } from '@/tests/support/safety/bundle-child';
import { type Child, type Line, startChild } from '@/tests/support/safety/child';
import { judgementsFromScratch } from '@/tests/support/safety/judgements-agree';
import { installRecorder } from '@/tests/support/safety/recorder';
import { useTestBank } from '@/tests/support/test-bank';

const bank = useTestBank({ fresh: 'each' });
const program = useBundledChild('hands-in-child.ts');
const COMMANDS = 100;
const ACTS = ['take', 'take', 'move', 'split', 'merge', 'repack'];

/** Two lots of one accession in a packet each: both programs always want the same few. */
async function fewPackets(): Promise<void> {
  installRecorder(connections().bulk);
  const stores = [await makeStore({ kind: 'freezer', targetTemperatureC: '-18' }), await makeStore()];
  const first = await makeLot({ storeId: stores[0]?.id, seedCount: '50000' });
  const accession = connections()
    .bulk.prepare<[string], string>(
      `SELECT a."number" FROM "Accession" a JOIN "Lot" l ON l."accessionId" = a."id" WHERE l."id" = ?`,
    )
    .pluck()
    .get(first.lotId);
  await makeLot({ accession, storeId: stores[1]?.id, seedCount: '50000' });
  await closeConnections();
}

async function workToTheEnd(env: Record<string, string>): Promise<Line[]> {
  const children: Child[] = ['one', 'two'].map((name) =>
    startChild(program.file, { dataDirectory: bank.directory, args: [name, String(COMMANDS), ...ACTS], env }),
  );
  await Promise.all(children.map((child) => child.until(({ word }) => word === 'ready')));
  for (const child of children) child.go();
  await Promise.all(children.map((child) => child.until(({ word }) => word === 'done')));
  await Promise.all(children.map((child) => child.ended()));
  return children.flatMap(({ lines }) => lines);
}

/** Seeds that an acknowledged command took out: its answer says so. */
const takenBy = ({ rest }: Line): number => {
  const answer = JSON.parse(rest.slice(rest.indexOf('{') < 0 ? rest.length : rest.indexOf('{')) || '{}');
  return 'seedsLeft' in answer ? answer.seeds : 0;
};

async function expectAgreement(lines: Line[]) {
  const database = new Database(bank.file);
  expect(complaintsAbout(database)).toEqual([]);
  const acknowledged = lines.filter(({ word, turn }) => word === 'ack' && turn > 0);
  const taken = acknowledged.reduce((sum, line) => sum + takenBy(line), 0);
  const left = database.prepare<[], number>(`SELECT SUM("seeds") FROM "Movement"`).pluck().get();
  expect(left).toBe(100_000 - taken);
  const written = database
    .prepare<[], number>(
      `SELECT COUNT(*) FROM "AuditEntry"
       WHERE "command" IN ('take-seed-out', 'move-packet', 'split-packet', 'merge-packets', 'repack-packet')`,
    )
    .pluck()
    .get();
  expect(written).toBe(acknowledged.length);
  const judged = await judgementsFromScratch(database, '2026-11-25');
  expect(judged.kept, 'a judgement is wrong and not marked').toEqual(judged.fresh);
  database.close();
  return { acknowledged, refused: lines.filter(({ word }) => word === 'refused'), stale: judged.stale };
}

it('loses no update when two programs work on the same few packets', { timeout: 180_000 }, async () => {
  await fewPackets();
  const { acknowledged, refused, stale } = await expectAgreement(await workToTheEnd({}));
  expect(acknowledged.length).toBeGreaterThan(COMMANDS);
  expect(refused.filter(({ rest }) => rest.startsWith('database-'))).toEqual([]);
  expect(stale).toBe(0);
});

it('says that nothing was saved to whoever does not want to wait, and nothing was', { timeout: 180_000 }, async () => {
  await fewPackets();
  const { acknowledged, refused } = await expectAgreement(await workToTheEnd({ HILUM_BUSY_TIMEOUT_MS: '0' }));
  const busy = refused.filter(({ rest }) => rest.startsWith('database-busy'));
  expect(busy.length).toBeGreaterThan(0);
  for (const { rest } of busy) expect(rest).toContain('Nothing was saved');
  expect(acknowledged.length).toBeGreaterThan(0);
});
