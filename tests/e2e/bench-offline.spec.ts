import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { type Browser, type BrowserContext, expect, type Page, test } from '@playwright/test';
import Database from 'better-sqlite3';
import { benchLink, countDish, openBenchOnce } from './support/bench-phone';
import { insertTrays } from './support/insert-trays';
import { BANKS, TEST_TODAY } from './support/prepare-banks';
import { type RunningServer, startServer } from './support/start-server';

/** Trays of four dishes; one phone counts the first five, the other the last five, so both count the one in the middle. */
const TRAYS = Array.from({ length: 9 }, (_, index) => `T-${9101 + index}`);
const BY_FIRST = TRAYS.slice(0, 5);
const BY_SECOND = TRAYS.slice(4);
const BY_BOTH = TRAYS[4] as string;
const DISHES = [1, 2, 3, 4];
const SPARE = 'T-9110';
const SIGNED_OUT = 'T-9111';

const PHONE = { viewport: { width: 390, height: 800 } };
const PASSWORD = 'three dry bean pods';

let directory: string;
let server: RunningServer;

test.beforeEach(() => {
  directory = mkdtempSync(path.join(tmpdir(), 'hilum-offline-'));
  cpSync(path.join(BANKS, 'demo'), directory, { recursive: true });
  insertTrays(
    directory,
    [...TRAYS, SPARE, SIGNED_OUT].map((number, index) => ({
      number,
      dishes: [50, 50, 50, 50],
      countEveryDays: 2,
      place: `Offline shelf ${String(index + 1).padStart(2, '0')}`,
    })),
  );
});
test.afterEach(async () => {
  await server?.stop();
  rmSync(directory, { recursive: true, force: true });
});

interface Row {
  tray: string;
  dish: number;
  normal: number;
  byName: string;
  countedBy: string | null;
}

/** Every count of today that the server holds, as it came, those that were replaced too. */
function rowsHeld(trays: readonly string[]): Row[] {
  const database = new Database(path.join(directory, 'hilum.db'), { readonly: true });
  try {
    return database
      .prepare<[string], Row & { on: string }>(
        `SELECT t."number" AS "tray", d."position" AS "dish", c."normal", c."byName", c."countedBy"
         FROM "TrayCount" c JOIN "TrayDish" d ON d."id" = c."dishId" JOIN "Tray" t ON t."id" = c."trayId"
         WHERE c."on" = ? ORDER BY t."number", d."position", c."id"`,
      )
      .all(TEST_TODAY)
      .filter(({ tray }) => trays.includes(tray));
  } finally {
    database.close();
  }
}

const figures = (rows: readonly Row[]) => rows.map(({ tray, dish, normal }) => `${tray} ${dish}: ${normal}`);

const phone = (browser: Browser): Promise<BrowserContext> =>
  browser.newContext({ ...PHONE, baseURL: server.address, serviceWorkers: 'allow' });

async function openOnce(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  await openBenchOnce(page, TRAYS[0] as string);
  return page;
}

async function openTray(page: Page, number: string): Promise<void> {
  await page.goto(`/bench#${number}`);
  await expect(page.getByRole('heading', { level: 1 })).toContainText(number);
}

/** What the first phone finds, and the second: the same, but for dish 2 of the tray that both count. */
const byFirst = (tray: string, dish: number) => 1 + ((TRAYS.indexOf(tray) * 4 + dish) % 13);
const bySecond = (tray: string, dish: number) => byFirst(tray, dish) + (tray === BY_BOTH && dish === 2 ? 20 : 0);

test('forty counts made on two phones without a connection are on the server once each, though it was restarted meanwhile', async ({
  browser,
}) => {
  test.setTimeout(300_000);
  server = await startServer({ dataDirectory: directory, env: { HILUM_TODAY: TEST_TODAY } });
  const first = await phone(browser);
  const second = await phone(browser);
  let one = await openOnce(first);
  const two = await openOnce(second);

  await first.setOffline(true);
  await second.setOffline(true);
  await server.stop();

  // Opened anew without a connection: the bench is there, and nothing else.
  await one.reload();
  await expect(one.getByText(TRAYS[0] as string)).toBeVisible();
  await one.goto('/germination');
  await expect(one.getByRole('heading', { name: 'You are not connected' })).toBeVisible();
  await one.getByRole('link', { name: 'Open the bench' }).click();
  await expect(one.getByText(TRAYS[0] as string)).toBeVisible();
  // What the camera reads from a dish's label.
  await one.goto(`/t/${TRAYS[2]}-3`);
  await expect(one.getByRole('heading', { level: 1 })).toContainText(TRAYS[2] as string);

  for (const tray of BY_FIRST) {
    await openTray(one, tray);
    for (const dish of DISHES) await countDish(one, dish, byFirst(tray, dish));
    if (tray === BY_FIRST[1]) {
      // Closed right after the last tap, and opened anew.
      await one.close();
      one = await first.newPage();
      await one.goto('/bench');
      await expect(benchLink(one)).toContainText('8 entries wait on this phone');
    }
  }
  for (const tray of BY_SECOND) {
    await openTray(two, tray);
    for (const dish of DISHES) await countDish(two, dish, bySecond(tray, dish));
  }
  await one.goto('/bench');
  await two.goto('/bench');
  await expect(benchLink(one)).toContainText('20 entries wait on this phone');
  await expect(benchLink(two)).toContainText('20 entries wait on this phone');
  expect(rowsHeld(TRAYS)).toEqual([]);

  server = await startServer({ dataDirectory: directory, port: server.port, env: { HILUM_TODAY: TEST_TODAY } });
  expect(rowsHeld(TRAYS)).toEqual([]);
  await first.setOffline(false);
  await expect(benchLink(one)).toHaveText('Everything is sent.', { timeout: 30_000 });
  await second.setOffline(false);
  await expect(benchLink(two)).toHaveText('Everything is sent.', { timeout: 30_000 });

  const entered = [
    ...BY_FIRST.flatMap((tray) => DISHES.map((dish) => `${tray} ${dish}: ${byFirst(tray, dish)}`)),
    ...BY_SECOND.flatMap((tray) => DISHES.map((dish) => `${tray} ${dish}: ${bySecond(tray, dish)}`)),
  ];
  expect(entered).toHaveLength(40);
  expect(figures(rowsHeld(TRAYS)).sort()).toEqual(entered.sort());

  // What both counted alike is one finding; what they counted differently is asked on either phone.
  for (const page of [one, two]) {
    await page.reload();
    await openTray(page, BY_BOTH);
    const dishes = page.getByRole('navigation', { name: 'Dishes' });
    await expect(dishes.getByRole('button', { name: /^Dish 2: look again/ })).toBeVisible();
    await expect(dishes.getByRole('button', { name: /look again/ })).toHaveCount(1);
    await dishes.getByRole('button', { name: /^Dish 2:/ }).click();
    await expect(page.getByRole('alert').filter({ hasText: 'Which holds?' })).toBeVisible();
  }
  const said = new RegExp(`^${byFirst(BY_BOTH, 2)}\\b`);
  await one.getByRole('region', { name: 'Counts disagree' }).getByRole('button', { name: said }).first().click();
  await expect(one.getByRole('region', { name: 'Counts disagree' })).toHaveCount(0);
  await expect.poll(() => rowsHeld([BY_BOTH]).length).toBe(9);
  await two.reload();
  await expect(two.getByRole('heading', { level: 1 })).toContainText(BY_BOTH);
  await expect(two.getByRole('navigation', { name: 'Dishes' }).getByRole('button', { name: /look again/ })).toHaveCount(
    0,
  );
  await first.close();
  await second.close();
});

test('a count whose answer is lost, or whose page is closed in the middle of a tap, arrives once', async ({
  browser,
}) => {
  test.setTimeout(120_000);
  server = await startServer({ dataDirectory: directory, env: { HILUM_TODAY: TEST_TODAY } });
  const context = await phone(browser);
  let page = await openOnce(context);
  await openTray(page, SPARE);
  let lost = 0;
  await page.route('**/api/bench/entries', async (route) => {
    await route.fetch();
    lost += 1;
    await route.abort();
  });
  await countDish(page, 1, 7);
  await expect.poll(() => rowsHeld([SPARE]).length).toBe(1);
  await expect.poll(() => lost).toBeGreaterThan(0);
  await page.unroute('**/api/bench/entries');
  await page.goto('/bench');
  await expect(benchLink(page)).toHaveText('Everything is sent.', { timeout: 30_000 });
  expect(figures(rowsHeld([SPARE]))).toEqual([`${SPARE} 1: 7`]);

  // Nothing gets out any more, and the page goes the moment it is tapped.
  await openTray(page, SPARE);
  await page.route('**/api/bench/**', (route) => route.abort());
  await page
    .getByRole('navigation', { name: 'Dishes' })
    .getByRole('button', { name: /^Dish 3:/ })
    .click();
  await page.evaluate(() => {
    const key = [...document.querySelectorAll('button')].find((one) => one.textContent === '9');
    key?.click();
    location.href = 'about:blank';
  });
  // A browser without any tab opens no new one here.
  const next = await context.newPage();
  await page.close();
  page = next;
  await page.goto('/bench');
  await expect(benchLink(page)).toHaveText('Everything is sent.', { timeout: 30_000 });
  await expect.poll(() => figures(rowsHeld([SPARE]))).toEqual([`${SPARE} 1: 7`, `${SPARE} 3: 9`]);
  await context.close();
});

test('two tabs of one phone see each other, and send each count once', async ({ browser }) => {
  server = await startServer({ dataDirectory: directory, env: { HILUM_TODAY: TEST_TODAY } });
  const context = await phone(browser);
  const one = await openOnce(context);
  const two = await context.newPage();
  await openTray(one, SPARE);
  await openTray(two, SPARE);
  await context.setOffline(true);
  await countDish(one, 1, 4);
  await expect(
    two.getByRole('navigation', { name: 'Dishes' }).getByRole('button', { name: /^Dish 1: 4/ }),
  ).toBeVisible();
  await countDish(two, 1, 6);
  await countDish(two, 2, 3);
  await expect(
    one.getByRole('navigation', { name: 'Dishes' }).getByRole('button', { name: /^Dish 1: 6/ }),
  ).toBeVisible();
  await context.setOffline(false);
  await expect.poll(() => figures(rowsHeld([SPARE])), { timeout: 30_000 }).toEqual([`${SPARE} 1: 6`, `${SPARE} 2: 3`]);
  await context.close();
});

test('the kept page is whole: every built file that it names is kept beside it', async ({ browser }) => {
  server = await startServer({ dataDirectory: directory, env: { HILUM_TODAY: TEST_TODAY } });
  const context = await phone(browser);
  const page = await openOnce(context);
  const missing = await page.evaluate(async () => {
    const kept = await (await caches.open('hilum-bench-page')).match('/bench');
    const named = [...((await kept?.text()) ?? '').matchAll(/\/_next\/static\/[\w/.~%-]+\.(?:js|css)/g)].map(
      ([file]) => file,
    );
    const files = await caches.open('hilum-bench-files');
    const has = await Promise.all([...new Set(named)].map(async (file) => ((await files.match(file)) ? null : file)));
    return { named: named.length, lacks: has.filter((file) => file !== null) };
  });
  expect(missing.named).toBeGreaterThan(3);
  expect(missing.lacks).toEqual([]);
  // The API is never answered from a cache.
  const cached = await page.evaluate(async () => {
    const names = await caches.keys();
    const keys = await Promise.all(
      names.map(async (name) => (await (await caches.open(name)).keys()).map(({ url }) => url)),
    );
    return keys.flat().filter((url) => url.includes('/api/'));
  });
  expect(cached).toEqual([]);
  const worker = await page.request.get('/worker/sw.js');
  expect(worker.headers()['cache-control']).toBe('no-cache');
  expect(worker.headers()['service-worker-allowed']).toBe('/');
  await context.close();
});

test('whoever was signed out meanwhile goes on counting, signs in, and everything is sent under the right name', async ({
  browser,
}) => {
  test.setTimeout(120_000);
  const setupCode = 'field-gate-77';
  server = await startServer({
    host: '0.0.0.0',
    dataDirectory: directory,
    env: { HILUM_TODAY: TEST_TODAY, HILUM_SETUP_CODE: setupCode },
  });
  const context = await phone(browser);
  const founder = await context.newPage();
  await founder.goto('/welcome');
  await founder.getByLabel('Setup code').fill(setupCode);
  await founder.getByLabel('Your name').fill('Ada');
  await founder.getByLabel('Sign-in name').fill('ada');
  await founder.getByLabel('Password').fill(PASSWORD);
  await founder.getByRole('button', { name: 'Open the bank' }).click();
  await expect(founder.getByRole('heading', { level: 1, name: 'Today' })).toBeVisible();
  await founder.close();

  const page = await openOnce(context);
  await openTray(page, SIGNED_OUT);
  // The session ends where the phone does not see it.
  const database = new Database(path.join(directory, 'hilum.db'));
  database.exec(`DELETE FROM "Session"`);
  database.close();
  await countDish(page, 1, 8);
  await countDish(page, 4, 2);
  await expect(benchLink(page)).toContainText('Signed out');
  await page.goto('/bench');
  // Signed out and connected, the server asks who it is; what was entered waits.
  await expect(page.getByRole('heading', { name: 'Sign in' })).toBeVisible();
  expect(rowsHeld([SIGNED_OUT])).toEqual([]);
  await page.getByLabel('Sign-in name').fill('ada');
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect(benchLink(page)).toHaveText('Everything is sent.', { timeout: 30_000 });
  await expect
    .poll(() => rowsHeld([SIGNED_OUT]))
    .toEqual([
      { tray: SIGNED_OUT, dish: 1, normal: 8, byName: 'Ada', countedBy: null },
      { tray: SIGNED_OUT, dish: 4, normal: 2, byName: 'Ada', countedBy: null },
    ]);
  await context.close();
});
