import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, type Page, test } from '@playwright/test';
import { BANKS } from './support/prepare-banks';
import { type RunningServer, startServer } from './support/start-server';

/*
 * One germination test from the list of what is due to the changed forecast, over the days it takes: the server is
 * started anew on each of them.
 */
const LOT = 'L-2019-007';
const SET_ON = '2026-11-25';
const FIRST_COUNT = '2026-12-01';
const FINAL_COUNT = '2026-12-09';

let directory: string;
let server: RunningServer | null = null;

test.beforeAll(() => {
  directory = mkdtempSync(path.join(tmpdir(), 'hilum-whole-test-'));
  cpSync(path.join(BANKS, 'demo'), directory, { recursive: true });
});
test.afterAll(async () => {
  await server?.stop();
  rmSync(directory, { recursive: true, force: true });
});

/** The next morning at the same address. */
async function onDay(today: string): Promise<string> {
  const port = server?.port ?? 0;
  await server?.stop();
  server = await startServer({ dataDirectory: directory, port, env: { HILUM_TODAY: today } });
  return server.address;
}

/** The chance of being below the line before this test and now, in percent, as its page says it. */
async function chancesLearnt(page: Page): Promise<{ before: number; now: number }> {
  const row = page
    .getByRole('region', { name: /without and with this test/ })
    .getByRole('row', { name: /chance of being below/ });
  const [before, now] = await row.getByRole('cell').allTextContents();
  return { before: Number(/\d+/.exec(before ?? '')?.[0]), now: Number(/\d+/.exec(now ?? '')?.[0]) };
}

/** Counts a tray of four dishes at the bench: what was found, dish by dish. */
async function countNormal(page: Page, found: readonly number[]): Promise<void> {
  for (const [index, normal] of found.entries()) {
    for (const digit of String(normal)) await page.getByRole('button', { name: digit, exact: true }).click();
    if (index < found.length - 1) await page.getByRole('button', { name: `Next: dish ${index + 2}` }).click();
  }
}

const everythingIsSent = (page: Page) => expect(page.locator('[data-link]')).toHaveText('Everything is sent.');

test('a whole test: due, planned, set, counted at the bench, closed; the lot is judged anew', async ({ page }) => {
  test.setTimeout(240_000);
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(String(error)));
  let tray = '';

  await test.step('the lot is due, and its forecast says why', async () => {
    const address = await onDay(SET_ON);
    await page.goto(`${address}/collection/lots/${LOT}`);
    await expect(page.getByText(/There is a 6\d % chance that it is already below/)).toBeVisible();
    await expect(page.getByText(/Regrow in 2027/).first()).toBeVisible();
    await page.goto(`${address}/germination`);
    const due = page.getByRole('listitem').filter({ hasText: LOT });
    await expect(due).toContainText('the chance of being below the line passes 10 %');
    await due.getByRole('link', { name: /Set a test/ }).click();
  });

  await test.step('the test is chosen and set; its seed leaves the packet', async () => {
    await page.waitForURL(/\/germination\/plan/);
    const goOn = page.getByRole('button', { name: 'Go on with the ticked lots' });
    if (await goOn.isVisible()) await goOn.click();
    await expect(page.getByRole('heading', { level: 1, name: 'Set tests' })).toBeVisible();
    await page.getByLabel('Seeds', { exact: true }).selectOption('4x50');
    await page.getByLabel('Where they stand').fill('incubator 1, shelf 1');
    await page.getByRole('button', { name: /Set this test/ }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'The test is set' })).toBeVisible();
    tray = (await page.getByRole('rowheader').first().textContent()) ?? '';
    expect(tray).toMatch(/^T-\d{4}$/);
    await page.goto(`${server?.address}/collection/lots/${LOT}/ledger`);
    await expect(page.getByRole('row', { name: new RegExp(tray) })).toContainText('−200');
  });

  await test.step('the first count, at the bench', async () => {
    const address = await onDay(FIRST_COUNT);
    await page.goto(`${address}/bench`);
    await page.getByRole('link', { name: new RegExp(tray) }).click();
    await expect(page.getByRole('heading', { level: 1 })).toContainText(tray);
    await countNormal(page, [30, 32, 31, 29]);
    await page.getByRole('button', { name: 'Done' }).click();
    await expect(page.getByText(`${tray} noted: 122 of 200 out, 122 today, 78 left.`)).toBeVisible();
    await everythingIsSent(page);
  });

  await test.step('it cannot be closed while seed is not classed', async () => {
    await page.goto(`${server?.address}/germination/${tray}`);
    await expect(page.getByRole('heading', { name: 'Before it can be closed' })).toBeVisible();
    await expect(page.getByRole('button', { name: 'Close the test' })).toHaveCount(0);
  });

  await test.step('the final count: every seed gets its class', async () => {
    const address = await onDay(FINAL_COUNT);
    await page.goto(`${address}/bench#${tray}`);
    await expect(page.getByRole('heading', { level: 1 })).toContainText(tray);
    // The fixed day of a test server is known once the server was asked; at the final count all classes are offered.
    await expect(page.getByRole('radio')).toHaveCount(5);
    for (const [index, normal] of [14, 12, 13, 15].entries()) {
      await page.getByRole('radio', { name: /^normal/ }).check();
      for (const digit of String(normal)) await page.getByRole('button', { name: digit, exact: true }).click();
      await page.getByRole('radio', { name: /^abnormal/ }).check();
      await page.getByRole('button', { name: '1', exact: true }).click();
      await page.getByRole('button', { name: /^Rest are dead/ }).click();
      if (index < 3) await page.getByRole('button', { name: `Next: dish ${index + 2}` }).click();
    }
    await page.getByRole('button', { name: 'Done' }).click();
    await everythingIsSent(page);
  });

  await test.step('closed, it says what was learnt', async () => {
    await page.goto(`${server?.address}/germination/${tray}`);
    await expect(page.getByRole('heading', { name: 'Ready to be closed' })).toBeVisible();
    await page.getByRole('button', { name: 'Close the test' }).click();
    await expect(page.getByText(/88 in 100 seeds germinated/)).toBeVisible();
    await expect(page.getByText(/The four replicates agree/)).toBeVisible();
    const learnt = page.getByRole('region', { name: 'What did we learn?' });
    await expect(learnt).toContainText(/The chance that the lot is below its line/);
    const { before, now } = await chancesLearnt(page);
    expect(before).toBeGreaterThan(60);
    expect(now).toBeLessThan(10);
    await expect(page.getByText(/Half of the seeds that germinated did so by/)).toBeVisible();
  });

  await test.step('the forecast, the next test and the regrow list have changed', async () => {
    await page.goto(`${server?.address}/collection/lots/${LOT}`);
    await expect(page.getByText(/There is a \d+ % chance that it is already below/)).toHaveCount(0);
    await expect(page.getByRole('row', { name: new RegExp(tray) })).toContainText('88 %');
    await expect(page.getByText('Already below the line more likely than not.')).toHaveCount(0);
    const due = await page.getByText(/Next test due/).textContent();
    expect(Number(/\d{4}/.exec(due ?? '')?.[0])).toBeGreaterThanOrEqual(2027);
    await page.goto(`${server?.address}/germination/plan`);
    await expect(page.getByText(LOT)).toHaveCount(0);
  });
  expect(errors).toEqual([]);
});
