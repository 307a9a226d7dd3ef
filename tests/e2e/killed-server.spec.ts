import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from '@playwright/test';
import Database from 'better-sqlite3';
import { actionsOfBuild, type ServerAction } from './support/app-surface';
import { BANKS, TEST_TODAY } from './support/prepare-banks';
import { type RunningServer, startServer } from './support/start-server';

/** The built server loses its power while people work; hundreds of such ends are in tests/server/safety. */
const ENDS = 5;
const AT_ONCE = 4;

let directory: string;
let entriesBefore = 0;
const file = () => path.join(directory, 'hilum.db');

test.beforeAll(() => {
  directory = mkdtempSync(path.join(tmpdir(), 'hilum-killed-'));
  cpSync(path.join(BANKS, 'demo'), directory, { recursive: true });
  const database = new Database(file(), { readonly: true });
  entriesBefore = Number(database.prepare(`SELECT MAX("id") FROM "AuditEntry"`).pluck().get());
  database.close();
});
test.afterAll(() => rmSync(directory, { recursive: true, force: true }));

const start = (): Promise<RunningServer> => startServer({ dataDirectory: directory, env: { HILUM_TODAY: TEST_TODAY } });

function packetsWithSeed(): string[] {
  const database = new Database(file(), { readonly: true });
  const ids = database
    .prepare<[], string>(`SELECT "packetId" FROM "Movement" GROUP BY 1 HAVING SUM("seeds") > 200 ORDER BY 1`)
    .pluck()
    .all();
  database.close();
  return ids;
}

/** Takes one seed as the form does, with a note by which it is known again; whether the server said that it did. */
async function takeOne(address: string, action: ServerAction, packetId: string, note: string): Promise<boolean> {
  const state = { formError: null, fieldErrors: {}, values: {}, attempt: 0 };
  // What the form holds goes before the arguments that name it: the server reads them as they come.
  const body = new FormData();
  for (const [name, value] of Object.entries({ packetId, amount: '1', unit: 'seeds', reason: 'sowing', note })) {
    body.append(`_1_${name}`, value);
  }
  body.append('0', JSON.stringify([state, '$K1']));
  const answer = await fetch(`${address}${action.page.replace(/\[\w+\]/g, 'nothing')}`, {
    method: 'POST',
    redirect: 'manual',
    headers: { 'Next-Action': action.id, Accept: 'text/x-component', Origin: address },
    body,
    signal: AbortSignal.timeout(30_000),
  });
  return answer.status === 303 || answer.headers.has('x-action-redirect');
}

test('what the server has acknowledged is there after its power went, and nothing is there by half', async () => {
  test.setTimeout(300_000);
  const action = actionsOfBuild().find(({ name }) => name.endsWith('#takeSeed')) as ServerAction;
  const packets = packetsWithSeed();
  let acknowledgedInAll = 0;
  for (let end = 1; end <= ENDS; end += 1) {
    const server = await start();
    const acknowledged: string[] = [];
    let on = true;
    const people = Array.from({ length: AT_ONCE }, async (_, person) => {
      for (let turn = 0; on; turn += 1) {
        const note = `end ${end} person ${person} turn ${turn}`;
        const packet = packets[(person + turn * AT_ONCE) % packets.length] as string;
        if (await takeOne(server.address, action, packet, note).catch(() => false)) acknowledged.push(note);
      }
    });
    // Some have been served, and the others are being served.
    await expect.poll(() => acknowledged.length, { timeout: 60_000, intervals: [5] }).toBeGreaterThan(3 + end);
    await server.kill();
    on = false;
    await Promise.all(people);
    acknowledgedInAll += acknowledged.length;

    const database = new Database(file());
    expect(database.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(database.pragma('foreign_key_check')).toEqual([]);
    const column = (sql: string, ...values: unknown[]) =>
      database
        .prepare<unknown[], unknown>(sql)
        .pluck()
        .all(...values);
    const notes = column(`SELECT "note" FROM "Movement" WHERE "note" LIKE ?`, `end ${end} person %`);
    expect(notes, 'lost what was acknowledged').toEqual(expect.arrayContaining(acknowledged));
    // Whoever was being served may find the seed taken or not.
    expect(notes.length).toBeLessThanOrEqual(acknowledged.length + AT_ONCE);
    const overdrawn = column(`SELECT "packetId" FROM "Movement" GROUP BY 1 HAVING SUM("seeds") < 0`);
    expect(overdrawn).toEqual([]);
    // Each line that was written in these tests has its audit entry, which says what was left then.
    const lines = column(`SELECT COUNT(*) FROM "Movement" WHERE "note" LIKE 'end %'`);
    const entries = column(
      `SELECT COUNT(*) FROM "AuditEntry" WHERE "id" > ? AND "command" = 'take-seed-out'`,
      entriesBefore,
    );
    expect(entries).toEqual(lines);
    database.close();
  }
  expect(acknowledgedInAll).toBeGreaterThan(ENDS * 4);

  const server = await start();
  expect((await fetch(`${server.address}/api/ready`)).ok).toBe(true);
  const stale = () => {
    const database = new Database(file(), { readonly: true });
    const lots = database
      .prepare<[string], number>(`SELECT COUNT(*) FROM "LotJudgement" WHERE "judgedOn" <> ?`)
      .pluck()
      .get(TEST_TODAY);
    database.close();
    return lots;
  };
  await expect.poll(stale, { timeout: 60_000, message: 'lots left behind are judged at the next start' }).toBe(0);
  await server.stop();
});
