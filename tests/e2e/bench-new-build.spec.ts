import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, type Page, test } from '@playwright/test';
import { benchLink, countDish, openBenchOnce } from './support/bench-phone';
import { countsHeld, insertTrays } from './support/insert-trays';
import { makeNewerBuild, NEW_WORDS, type NewerBuild, OLD_WORDS } from './support/newer-build';
import { BANKS, TEST_TODAY } from './support/prepare-banks';
import { type RunningServer, startServer } from './support/start-server';

const TRAY = 'T-9501';

let directory: string;
let newer: NewerBuild;
let server: RunningServer | undefined;

test.beforeEach(() => {
  newer = makeNewerBuild();
  directory = mkdtempSync(path.join(tmpdir(), 'hilum-new-build-'));
  cpSync(path.join(BANKS, 'demo'), directory, { recursive: true });
  insertTrays(directory, [{ number: TRAY, dishes: [50, 50, 50], place: 'Shelf of two builds' }]);
});
test.afterEach(async () => {
  await server?.stop();
  server = undefined;
  for (const one of [directory, newer.directory]) rmSync(one, { recursive: true, force: true });
});

const start = (more: { port?: number; program?: string } = {}) =>
  startServer({ dataDirectory: directory, env: { HILUM_TODAY: TEST_TODAY }, ...more });

/** Which scripts of the bench the phone keeps: that of the old build, that of the newer one. */
const scriptsKept = (page: Page) =>
  page.evaluate(
    async (scripts) => {
      const files = await caches.open('hilum-bench-files');
      const kept = await Promise.all(scripts.map((script) => files.match(script)));
      return kept.map((file) => file !== undefined);
    },
    [newer.oldScript, newer.newScript],
  );

const words = (page: Page, said: string) => page.getByRole('link', { name: said, exact: true });

test('a phone with an older bench is told of the newer one, takes it over when it says so, and loses nothing that waits', async ({
  browser,
}) => {
  test.setTimeout(240_000);
  server = await start();
  const context = await browser.newContext({ viewport: { width: 390, height: 800 }, baseURL: server.address });
  const page = await context.newPage();
  await openBenchOnce(page, TRAY);
  await expect(words(page, OLD_WORDS)).toBeVisible();
  expect(await scriptsKept(page)).toEqual([true, false]);

  await context.setOffline(true);
  await page.goto(`/bench#${TRAY}`);
  await countDish(page, 1, 7);
  await countDish(page, 3, 4);
  await page.goto('/bench#');
  await expect(benchLink(page)).toContainText('2 entries wait on this phone');
  await server.stop();
  server = await start({ port: server.port, program: newer.program });

  // Nothing is sent yet: what waits has to live through the change.
  await context.route('**/api/bench/**', (route) => route.abort());
  await context.setOffline(false);
  // Another page of Hilum is opened on this phone; with it the browser hears of the newer worker.
  const other = await context.newPage();
  await other.goto('/germination');
  await expect(page.getByText('A newer Hilum is ready.')).toBeVisible({ timeout: 30_000 });
  // The bench that is open goes on as it was.
  await expect(words(page, OLD_WORDS)).toBeVisible();
  await page.goto(`/bench#${TRAY}`);
  await countDish(page, 2, 9);
  await page.goto('/bench#');
  await page.getByRole('button', { name: 'Load it' }).click();
  await expect(words(page, NEW_WORDS)).toBeVisible({ timeout: 30_000 });
  await expect(page.getByText('A newer Hilum is ready.')).toBeHidden();
  await expect(benchLink(page)).toContainText('3 entries wait on this phone');
  expect(countsHeld(directory, TRAY)).toEqual([]);

  // The newer page is whole on the phone, and the older one's script is gone from it.
  await expect.poll(() => scriptsKept(page), { timeout: 30_000 }).toEqual([false, true]);
  await context.setOffline(true);
  await server.stop();
  await page.goto(`/bench#${TRAY}`);
  await page.reload();
  await expect(page.getByRole('heading', { level: 1 })).toContainText(TRAY);
  await countDish(page, 2, 8);
  await page.goto('/bench#');
  await expect(words(page, NEW_WORDS)).toBeVisible();
  // The count before it was being sent when the connection went; it goes first, and is replaced.
  await expect(benchLink(page)).toContainText('4 entries wait on this phone');

  server = await start({ port: server.port, program: newer.program });
  await context.unroute('**/api/bench/**');
  await context.setOffline(false);
  await expect(benchLink(page)).toHaveText('Everything is sent.', { timeout: 60_000 });
  expect(countsHeld(directory, TRAY)).toEqual([
    `${TEST_TODAY} 1: 7/0/0/0/0`,
    `${TEST_TODAY} 2: 8/0/0/0/0`,
    `${TEST_TODAY} 3: 4/0/0/0/0`,
  ]);
  await context.close();
});

test('a newer bench whose files do not all arrive is not opened: the older one, which is whole, is', async ({
  browser,
}) => {
  test.setTimeout(120_000);
  server = await start();
  const context = await browser.newContext({ viewport: { width: 390, height: 800 }, baseURL: server.address });
  const page = await context.newPage();
  await openBenchOnce(page, TRAY);
  await server.stop();
  // It names a script that it cannot give out, as when the connection goes after the page itself has come.
  rmSync(path.join(newer.directory, '.next', newer.newScript.replace('/_next/', '')));
  server = await start({ port: server.port, program: newer.program });
  await page.goto('/bench');
  await expect(words(page, OLD_WORDS)).toBeVisible();
  expect(await scriptsKept(page)).toEqual([true, false]);
  await context.close();
});
