import { AxeBuilder } from '@axe-core/playwright';
import { expect, test } from './support/bank';
import { benchLink, countDish, openBenchOnce } from './support/bench-phone';
import { countsHeld, insertTrays } from './support/insert-trays';
import { TEST_TODAY } from './support/prepare-banks';

const [FULL, ROOM_AGAIN] = ['T-9601', 'T-9602'] as const;

test.use({ viewport: { width: 390, height: 800 } });

test.beforeAll(({ bankDirectory }) => {
  insertTrays(
    bankDirectory,
    [FULL, ROOM_AGAIN].map((number, index) => ({ number, dishes: [50, 50], place: `Full phone ${index + 1}` })),
  );
});

test.beforeEach(async ({ page }) => {
  // As a browser does on a phone without room: what is to be written is not, what is there can be read and deleted.
  await page.addInitScript(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...entry: Parameters<typeof put>) {
      if (sessionStorage.getItem('full') === 'yes') throw new DOMException('no room', 'QuotaExceededError');
      return put.apply(this, entry);
    };
  });
});

const fill = (full: string) => sessionStorage.setItem('full', full);

test('a phone without room says what it cannot keep and what to do, asks before it closes, and sends what the page holds', async ({
  page,
  context,
  bankDirectory,
}) => {
  await openBenchOnce(page, FULL);
  await page.goto(`/bench#${FULL}`);
  await page.evaluate(fill, 'yes');
  await context.setOffline(true);
  await countDish(page, 1, 12);
  await countDish(page, 2, 9);
  const said = page.getByRole('alert').filter({ hasText: 'No room is left on this phone' });
  await expect(said).toContainText('Leave it open until everything is sent.');
  await expect(said).toContainText('delete pictures or apps');
  await expect(benchLink(page)).toHaveText('No connection: 2 entries wait in this page.');
  const { violations } = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag22aa']).analyze();
  expect(violations).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);

  const asked = page.waitForEvent('dialog');
  await page.close({ runBeforeUnload: true });
  const question = await asked;
  expect(question.type()).toBe('beforeunload');
  await question.dismiss();

  await context.setOffline(false);
  await expect(benchLink(page)).toHaveText('Everything is sent.', { timeout: 30_000 });
  expect(countsHeld(bankDirectory, FULL)).toEqual([`${TEST_TODAY} 1: 12/0/0/0/0`, `${TEST_TODAY} 2: 9/0/0/0/0`]);
});

test('once there is room the phone keeps what the page held, through a reload without a connection', async ({
  page,
  context,
  bankDirectory,
}) => {
  await openBenchOnce(page, ROOM_AGAIN);
  await page.goto(`/bench#${ROOM_AGAIN}`);
  await context.setOffline(true);
  await countDish(page, 1, 3);
  await expect(benchLink(page)).toHaveText('No connection: 1 entry waits on this phone.');
  await page.evaluate(fill, 'yes');
  await countDish(page, 1, 5);
  await countDish(page, 2, 8);
  const alert = page.getByRole('alert').filter({ hasText: 'No room is left on this phone' });
  await expect(alert).toBeVisible();
  await page.evaluate(fill, 'no');
  await page.goto('/bench#');
  await page.getByRole('button', { name: 'Try now' }).click();
  await expect(alert).toBeHidden();
  await expect(benchLink(page)).toHaveText('No connection: 2 entries wait on this phone.');
  await page.reload();
  await expect(benchLink(page)).toHaveText('No connection: 2 entries wait on this phone.');
  await context.setOffline(false);
  await expect(benchLink(page)).toHaveText('Everything is sent.', { timeout: 30_000 });
  expect(countsHeld(bankDirectory, ROOM_AGAIN)).toEqual([`${TEST_TODAY} 1: 5/0/0/0/0`, `${TEST_TODAY} 2: 8/0/0/0/0`]);
});
