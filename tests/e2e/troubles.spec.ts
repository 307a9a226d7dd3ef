import { cpSync, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { type Page, test as plainTest } from '@playwright/test';
import Database from 'better-sqlite3';
import { expect, test } from './support/bank';
import { BANKS, TEST_TODAY } from './support/prepare-banks';
import { type RunningServer, startServer } from './support/start-server';

/** What goes wrong on an ordinary day: a clear word, nothing lost, nothing of the machine's insides on the screen. */

test.describe('bad input', () => {
  for (const address of [
    '/collection/lots/L-9999-999',
    '/collection/accessions/nobody',
    '/collection/crops/none',
    '/germination/T-99999',
    '/stores/none',
    '/regrow/nobody',
    '/import/none',
  ]) {
    test(`nothing is there: ${address}`, async ({ page }) => {
      const response = await page.goto(address);
      expect(response?.status()).toBe(404);
      await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
      await expect(page.getByRole('navigation', { name: 'Places' }).first()).toBeAttached();
    });
  }

  test('an empty form says beside each field what it needs', async ({ page }) => {
    await page.goto('/collection/lots/log');
    await page.getByRole('button', { name: 'Store the lot' }).click();
    await expect(page.getByText('Some entries need another look. Nothing was saved yet.')).toBeVisible();
    await expect(page.getByLabel('Accession')).toHaveAttribute('aria-invalid', 'true');
    await expect(page.getByLabel('Accession')).toBeFocused();
  });

  test('absurd values are named and everything typed is kept', async ({ page }) => {
    await page.goto('/collection/lots/log?accession=A-0027');
    await page.getByLabel('Harvested on').fill('2031-01-01');
    await page.getByLabel('Isolation').selectOption({ label: 'cage' });
    await page.getByLabel('Seeds counted').fill('400');
    await page.getByLabel('Moisture').fill('140');
    await page.getByLabel('Notes').fill('typed with wet hands');
    await page.getByRole('button', { name: 'Store the lot' }).click();
    await expect(page.getByText(/This date is after today \(2026-11-25\)/)).toBeVisible();
    await expect(page.getByText('Write a number between 0.5 and 60 %.')).toBeVisible();
    await expect(page.getByLabel('Moisture')).toHaveValue('140');
    await expect(page.getByLabel('Isolation')).toHaveValue('cage');
    await expect(page.getByLabel('Notes')).toHaveValue('typed with wet hands');
  });

  test('more germinated than were set', async ({ page }) => {
    await page.goto('/germination/new?lot=L-2017-010');
    const dish = page.getByRole('group', { name: 'Replicate 1' });
    await dish.getByLabel('normal', { exact: true }).fill('61');
    await page.getByLabel('Set on').fill('2026-11-01');
    await page.getByRole('button', { name: 'Save the test' }).click();
    await expect(dish.getByText(/61/).first()).toBeVisible();
    await expect(dish.getByLabel('normal', { exact: true })).toHaveValue('61');
    await expect(page).toHaveURL(/\/germination\/new/);
  });

  test('a packet cannot give more than it holds', async ({ page }) => {
    await page.goto('/collection/lots/L-2017-010');
    await page.getByRole('link', { name: 'Take seed out', exact: true }).click();
    await page.getByLabel('How much').fill('99999');
    await page.getByLabel('For', { exact: true }).selectOption('sharing');
    await page.getByRole('button', { name: /Take/ }).last().click();
    await expect(page.getByText('This packet holds about 220 seeds.')).toBeVisible();
    await expect(page.getByLabel('How much')).toHaveValue('99999');
  });

  test('two people edit one accession: the second is told what the first changed', async ({ page, context }) => {
    const other = await context.newPage();
    for (const one of [page, other]) await one.goto('/collection/accessions/A-0027/edit');
    await other.getByLabel('Name').fill('Bluer Skerry');
    await other.getByRole('button', { name: /Save/ }).click();
    await expect(other.getByRole('heading', { level: 1 })).toContainText('Bluer Skerry');
    await page.getByLabel('Notes').fill('seen from the pier');
    await page.getByRole('button', { name: /Save/ }).click();
    await expect(page.getByRole('alert').first()).toContainText('Bluer Skerry');
    await expect(page.getByLabel('Notes')).toHaveValue('seen from the pier');
  });
});

plainTest.describe('trouble with the file', () => {
  let directory: string;
  let server: RunningServer;
  plainTest.beforeAll(async () => {
    directory = mkdtempSync(path.join(tmpdir(), 'hilum-troubles-'));
    cpSync(path.join(BANKS, 'demo'), directory, { recursive: true });
    server = await startServer({
      dataDirectory: directory,
      env: { HILUM_TODAY: TEST_TODAY, HILUM_BUSY_TIMEOUT_MS: '300', LOG_LEVEL: 'silent' },
    });
  });
  plainTest.afterAll(async () => {
    await server.stop();
    rmSync(directory, { recursive: true, force: true });
  });

  const decide = async (page: Page) => {
    await page.getByRole('button', { name: 'Record the decision' }).click();
  };

  plainTest(
    'another program holds it: the form waits with what was typed, and the next try goes through',
    async ({ page }) => {
      await page.goto(`${server.address}/regrow/A-0018`);
      await page.getByLabel('Why').fill('The leeks come first.');
      const holder = new Database(path.join(directory, 'hilum.db'));
      holder.exec('BEGIN IMMEDIATE');
      await decide(page);
      await expect(page.getByText('Another program is writing to the collection just now.')).toBeVisible();
      await expect(page.getByLabel('Why')).toHaveValue('The leeks come first.');
      holder.exec('ROLLBACK');
      holder.close();
      await decide(page);
      await expect(page.getByText('Recorded. It stays visible here and in the list.')).toBeVisible();
    },
  );

  plainTest('the file is gone, and comes back', async ({ page }) => {
    const file = path.join(directory, 'hilum.db');
    renameSync(file, `${file}.away`);
    const response = await page.goto(`${server.address}/collection/lots`);
    expect(response?.status()).toBe(500);
    await expect(page.getByText(/The collection's file can't be opened/)).toBeVisible();
    expect(await page.content()).not.toMatch(/at .*\.js:\d+|node_modules|SqliteError/);
    renameSync(`${file}.away`, file);
    expect((await page.goto(`${server.address}/collection/lots`))?.status()).toBe(200);
  });
});
