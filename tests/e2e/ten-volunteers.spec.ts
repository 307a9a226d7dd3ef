import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, type Page, test } from '@playwright/test';
import Database from 'better-sqlite3';
import { BANKS, TEST_TODAY } from './support/prepare-banks';
import { type RunningServer, startServer } from './support/start-server';

/** Ten people at ten screens take from one packet in the same second. */
const WANTED = [30, 25, 4, 31, 9, 12, 6, 20, 3, 8];

let directory: string;
let server: RunningServer;

test.beforeAll(async () => {
  directory = mkdtempSync(path.join(tmpdir(), 'hilum-ten-'));
  cpSync(path.join(BANKS, 'demo'), directory, { recursive: true });
  server = await startServer({ dataDirectory: directory, env: { HILUM_TODAY: TEST_TODAY } });
});
test.afterAll(async () => {
  await server?.stop();
  rmSync(directory, { recursive: true, force: true });
});

interface PacketNow {
  id: string;
  number: string;
  seeds: number;
}

function inDatabase<Result>(look: (database: Database.Database) => Result): Result {
  const database = new Database(path.join(directory, 'hilum.db'), { readonly: true });
  try {
    return look(database);
  } finally {
    database.close();
  }
}

/** Any packet with a few hundred seeds: the ten want half as much again. */
const findPacket = () =>
  inDatabase(
    (database) =>
      database
        .prepare<[], PacketNow>(
          `SELECT p."id", p."number", SUM(m."seeds") AS "seeds" FROM "Packet" p JOIN "Movement" m ON m."packetId" = p."id"
           GROUP BY p."id" HAVING SUM(m."seeds") > 300 ORDER BY SUM(m."seeds"), p."number" LIMIT 1`,
        )
        .get() as PacketNow,
  );

test('ten people at once never take more than there is, and whoever gets none is told', async ({ browser }) => {
  test.setTimeout(180_000);
  const packet = findPacket();
  const lastEntry = inDatabase((database) =>
    Number(database.prepare(`SELECT MAX("id") FROM "AuditEntry"`).pluck().get()),
  );
  const share = Math.ceil(packet.seeds / 100);
  const wanted = WANTED.map((parts) => parts * share);
  const pages: Page[] = [];
  for (const amount of wanted) {
    const page = await (await browser.newContext({ baseURL: server.address })).newPage();
    await page.goto(`/stores/packets/${packet.number}/take`);
    await page.getByLabel('How much').fill(String(amount));
    await page.getByLabel('For', { exact: true }).selectOption({ label: 'sowing' });
    await page.getByLabel('Note').fill(`bed of ${amount}`);
    pages.push(page);
  }
  await Promise.all(pages.map((page) => page.getByRole('button', { name: 'Take it out' }).click()));
  const answers = await Promise.all(
    pages.map(async (page, index) => {
      const refused = page.getByText(/This packet holds (about )?\d+ seeds/).first();
      const patience = { timeout: 60_000 };
      // Whoever was granted the seed is sent on to the packet's page.
      const granted = page.waitForURL(({ pathname }) => pathname === `/stores/packets/${packet.number}`, patience);
      await Promise.race([refused.waitFor(patience), granted]);
      const told = (await refused.count()) > 0 ? await refused.textContent() : null;
      return { amount: wanted[index] as number, told };
    }),
  );
  await Promise.all(pages.map((page) => page.context().close()));

  const ledger = inDatabase((database) =>
    database
      .prepare<[string], { seeds: number; note: string | null }>(
        `SELECT "seeds", "note" FROM "Movement" WHERE "packetId" = ? ORDER BY "rowid"`,
      )
      .all(packet.id),
  );
  const left = ledger.reduce((sum, { seeds }) => sum + seeds, 0);
  const granted = answers.filter(({ told }) => told === null).map(({ amount }) => amount);
  const taken = ledger.filter(({ note }) => note?.startsWith('bed of ')).map(({ seeds }) => -seeds);
  const inOrder = (numbers: number[]) => [...numbers].sort((one, other) => one - other);
  expect(inOrder(taken)).toEqual(inOrder(granted));
  expect(left).toBe(packet.seeds - granted.reduce((sum, seeds) => sum + seeds, 0));
  expect(left).toBeGreaterThanOrEqual(0);
  expect(granted.length).toBeLessThan(WANTED.length);
  for (const { amount, told } of answers) {
    if (told !== null) expect(amount, told).toBeGreaterThan(left);
  }
  const entries = inDatabase((database) =>
    database
      .prepare<[number, string], string>(
        `SELECT "summary" FROM "AuditEntry" WHERE "id" > ? AND "command" = 'take-seed-out' AND "entityId" = ? ORDER BY "id"`,
      )
      .pluck()
      .all(lastEntry, packet.id),
  );
  expect(entries).toHaveLength(granted.length);
  expect(entries.at(-1)).toContain(`; ${left} left`);
});
