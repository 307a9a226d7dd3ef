import { expect, test } from './support/bank';
import { insertTrays } from './support/insert-trays';

const TRAYS = 200;
const numberOf = (index: number) => `T-${7001 + index}`;

test.use({ viewport: { width: 360, height: 740 } });

test.beforeAll(({ bankDirectory }) => {
  insertTrays(
    bankDirectory,
    Array.from({ length: TRAYS }, (_, index) => ({
      number: numberOf(index),
      place: `One of many, shelf ${String(1 + Math.floor(index / 20)).padStart(2, '0')}`,
      dishes: [50, 50, 50, 50],
    })),
  );
});

test('of two hundred trays an entry draws one row anew, and no other', async ({ page }) => {
  await page.goto('/bench');
  await expect(page.getByRole('link', { name: /^T-7/ })).toHaveCount(TRAYS);
  await page.getByRole('link', { name: new RegExp(numberOf(7)) }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText(numberOf(7));

  // React hands every element new properties when what made it is drawn anew, and the old ones when it is passed over.
  await page.evaluate(() => {
    const drawn = [...document.querySelectorAll('main li a')].map((row) => [row, propertiesOf(row)] as const);
    function propertiesOf(row: Element): unknown {
      const key = Object.keys(row).find((name) => name.startsWith('__reactProps'));
      if (!key) throw new Error('React keeps the properties of an element elsewhere now');
      return (row as unknown as Record<string, unknown>)[key];
    }
    Object.assign(window, {
      drawnAnew: () =>
        drawn.filter(([row, before]) => propertiesOf(row) !== before).map(([row]) => row.getAttribute('href')),
    });
  });
  await page.getByRole('button', { name: 'One normal more' }).click();
  await expect(page.locator('[data-tally]')).toContainText('1 of 50 out');
  // The list behind the tray is drawn when there is time for it.
  const drawnAnew = () => page.evaluate(() => (window as unknown as { drawnAnew: () => string[] }).drawnAnew());
  await expect.poll(drawnAnew).toEqual([`#${numberOf(7)}`]);
});

test('a few digits find a tray among two hundred', async ({ page }) => {
  await page.goto('/bench');
  await page.getByLabel(/^Find a tray/).fill('7150');
  await expect(page.locator('main li')).toHaveCount(1);
  await page.getByLabel(/^Find a tray/).press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toContainText('T-7150');
});
