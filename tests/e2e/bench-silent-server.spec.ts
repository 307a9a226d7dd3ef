import { expect, test } from './support/bank';
import { benchLink, countDish, openBenchOnce } from './support/bench-phone';
import { countsHeld, insertTrays } from './support/insert-trays';
import { TEST_TODAY } from './support/prepare-banks';
import { type Line, startLine } from './support/start-line';

/*
 * At the edge of a signal requests neither succeed nor fail; a browser waits for them for minutes. The phone gives the
 * server three seconds, and a machine under load a few more to draw.
 */
const SOON_MS = 10_000;
const TRAYS = ['T-9401', 'T-9402'] as const;

let line: Line;

test.use({
  viewport: { width: 390, height: 800 },
  baseURL: async ({ server }, use) => {
    line = await startLine(server.port);
    await use(line.address);
    await line.close();
  },
});

test.beforeAll(({ bankDirectory }) => {
  insertTrays(
    bankDirectory,
    TRAYS.map((number, index) => ({ number, dishes: [50, 50, 50], place: `Far shelf ${index + 1}` })),
  );
});

test('a server that does not answer and does not fail keeps nobody from the bench, nor from the tray of a label', async ({
  page,
  bankDirectory,
}) => {
  test.setTimeout(180_000);
  await openBenchOnce(page, TRAYS[0]);
  line.be('silent');
  await page.goto('/bench', { timeout: SOON_MS });
  await expect(page.getByText(TRAYS[0])).toBeVisible();
  // What the camera reads from two dishes, one after the other.
  for (const [index, tray] of TRAYS.entries()) {
    await page.goto(`/t/${tray}-2`, { timeout: SOON_MS });
    await expect(page.getByRole('heading', { level: 1 })).toContainText(tray);
    await countDish(page, 2, 5 + index);
  }
  await page.reload({ timeout: SOON_MS });
  await expect(page.getByRole('heading', { level: 1 })).toContainText(TRAYS[1]);
  await expect(benchLink(page)).toContainText('2 entries', { timeout: 40_000 });
  expect(countsHeld(bankDirectory, TRAYS[0])).toEqual([]);

  line.be('open');
  await expect(benchLink(page)).toHaveText('Everything is sent.', { timeout: 90_000 });
  expect(countsHeld(bankDirectory, TRAYS[0])).toEqual([`${TEST_TODAY} 2: 5/0/0/0/0`]);
  expect(countsHeld(bankDirectory, TRAYS[1])).toEqual([`${TEST_TODAY} 2: 6/0/0/0/0`]);
});

test('answers that break off in the middle leave the kept page whole, and it opens', async ({ page }) => {
  test.setTimeout(120_000);
  await openBenchOnce(page, TRAYS[0]);
  line.be('breaks off');
  for (let visit = 0; visit < 2; visit += 1) {
    await page.goto('/bench', { timeout: SOON_MS });
    await expect(page.getByText(TRAYS[0])).toBeVisible();
  }
  line.be('silent');
  await page.goto('/bench', { timeout: SOON_MS });
  await expect(page.getByText(TRAYS[0])).toBeVisible();
});
