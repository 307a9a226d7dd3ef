import { AxeBuilder } from '@axe-core/playwright';
import sharp from 'sharp';
import { expect, test } from './support/bank';
import { benchLink, openBenchOnce } from './support/bench-phone';
import { insertTrays } from './support/insert-trays';

const TRAY = 'T-9701';

test.use({ viewport: { width: 390, height: 800 } });

test.beforeAll(({ bankDirectory }) => {
  insertTrays(bankDirectory, [{ number: TRAY, dishes: [50, 50], place: 'Photographed' }]);
});

test('a photograph that waits to be sent is seen, also after a reload without a connection; once sent it is let go', async ({
  page,
  context,
}) => {
  await page.addInitScript(() => {
    const held = new Set<string>();
    Object.assign(globalThis, { held });
    const { createObjectURL, revokeObjectURL } = URL;
    URL.createObjectURL = (what) => {
      const made = createObjectURL(what);
      held.add(made);
      return made;
    };
    URL.revokeObjectURL = (address) => {
      held.delete(address);
      revokeObjectURL(address);
    };
  });
  await openBenchOnce(page, TRAY);
  await page.goto(`/bench#${TRAY}`);
  await context.setOffline(true);
  const picture = await sharp({ create: { width: 900, height: 600, channels: 3, background: '#3a7d44' } })
    .jpeg()
    .toBuffer();
  await page.getByLabel('Photo of dish 1').setInputFiles({ name: 'dish.jpg', mimeType: 'image/jpeg', buffer: picture });
  const notes = page.getByRole('region', { name: 'Notes and photos' });
  const seen = notes.getByRole('img', { name: /^dish 1, / });
  const isDrawn = () => seen.evaluate((image: HTMLImageElement) => image.complete && image.naturalWidth === 900);
  await expect(seen).toBeVisible();
  await expect.poll(isDrawn).toBe(true);
  await expect(notes.getByText('waiting to be sent')).toBeVisible();
  const { violations } = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag22aa']).analyze();
  expect(violations).toEqual([]);

  expect(await page.evaluate(() => (globalThis as unknown as { held: Set<string> }).held.size)).toBe(1);

  await page.reload();
  await expect(seen).toBeVisible();
  await expect.poll(isDrawn).toBe(true);
  await context.setOffline(false);
  await expect(benchLink(page)).toHaveText('Everything is sent.', { timeout: 30_000 });
  await expect(notes.getByRole('link', { name: 'Photo' })).toBeVisible();
  await expect(seen).toHaveCount(0);
  // Nor does the browser hold it in memory any longer.
  expect(await page.evaluate(() => (globalThis as unknown as { held: Set<string> }).held.size)).toBe(0);
});
