import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, test } from './support/bank';

test.describe.configure({ mode: 'serial' });

/** Its logger was away from 20 to 28 November 2023. */
const STORE = 'Cool pantry';
const LOT = 'L-2020-011';
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const HOURS = 9 * 24;

/** The nine days, found on another logger: hourly, about 45 degrees, with the last row cut off. */
function hotDays(): Buffer {
  const two = (value: number) => String(value).padStart(2, '0');
  const rows = Array.from({ length: HOURS }, (_, hour) => {
    const at = new Date(Date.UTC(2023, 10, 20, hour));
    const date = `${two(at.getUTCDate())}.${two(at.getUTCMonth() + 1)}.${at.getUTCFullYear()}`;
    return `${date};${two(at.getUTCHours())}:00;${(45 + Math.sin(hour / 4)).toFixed(1).replace('.', ',')};61,5`;
  });
  const above = ['Shelf logger;100452', 'Interval;01:00', '', 'Date;Time;Temp;RH %'];
  return Buffer.from([...above, ...rows, '29.11.2023;00'].join('\r\n'));
}

const file = () => ({ name: 'pantry-november.csv', mimeType: 'text/csv', buffer: hotDays() });

async function looksRight(page: Page) {
  for (const width of [390, 1280]) {
    await page.setViewportSize({ width, height: 844 });
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(overflow, `wider than a screen of ${width} px`).toBeLessThanOrEqual(0);
  }
  const { violations } = await new AxeBuilder({ page }).withTags(TAGS).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`)).toEqual(
    [],
  );
}

async function openReadings(page: Page) {
  await page.goto('/stores');
  await page.getByRole('link', { name: STORE, exact: true }).first().click();
  await page.getByRole('link', { name: 'Readings', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Readings' })).toBeVisible();
}

/** How many in 100 seeds of a lot are most likely alive. */
async function alive(page: Page, lot: string): Promise<number> {
  await page.goto(`/collection/lots/${lot}`);
  const caption = page.getByText(/[Mm]ost likely \d+ in 100 seeds are alive today/).first();
  return Number(/most likely (\d+) in 100/i.exec((await caption.textContent()) ?? '')?.[1]);
}

test('a logger file of hot days is imported, and what it cost the seed is seen', async ({ page, request }) => {
  test.setTimeout(180_000);
  const before = await alive(page, LOT);
  expect(before).toBeGreaterThan(20);

  await test.step('what is no logger file is refused beside the field', async () => {
    await openReadings(page);
    await page.getByLabel('A file from the logger').setInputFiles({
      name: 'names.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from('Number;Name\nB-1;Wrack Line\n'),
    });
    await page.getByRole('button', { name: 'Read the file' }).click();
    await expect(page.getByText('No rows with a date, a time and a number were found')).toBeVisible();
  });

  await test.step('the file is read, the zone asked for', async () => {
    await page.getByLabel('A file from the logger').setInputFiles(file());
    await page.getByRole('button', { name: 'Read the file' }).click();
    await expect(page.getByText("Choose the time zone of the logger's clock, then read the file again.")).toBeVisible();
    await expect(page.getByLabel('Dates are written')).toHaveValue('day-month-year');
    await expect(page.getByRole('img', { name: /^Temperature, °C from 20 Nov 2023/ })).toBeVisible();
    await expect(page.getByRole('row', { name: /Last row cut off/ })).toContainText('line 221: 29.11.2023;00');
    await looksRight(page);
    await page.getByLabel("Time zone of the logger's clock").selectOption('UTC+01:00');
    await page.getByRole('button', { name: 'Read the file again' }).click();
    await expect(page.getByText('216 readings are new to this store.')).toBeVisible();
    await expect(page.getByRole('cell', { name: '19 Nov 2023, 23:00' })).toBeVisible();
  });

  await test.step('import it', async () => {
    await page.getByRole('button', { name: 'Import 216 readings' }).click();
    await expect(page.getByText('216 readings were added.')).toBeVisible();
    await looksRight(page);
  });

  await test.step('the same file again changes nothing, and its zone is remembered', async () => {
    await openReadings(page);
    await page.getByLabel('A file from the logger').setInputFiles(file());
    await page.getByRole('button', { name: 'Read the file' }).click();
    await expect(page.getByText('This very file was imported on')).toBeVisible();
    await expect(page.getByText('Every reading of this file is there already')).toBeVisible();
    await page.getByRole('button', { name: 'Import 0 readings' }).click();
    await expect(page.getByText('Nothing was changed.')).toBeVisible();
  });

  await test.step('what it cost, on the climate page and on the lot', async () => {
    await page.getByRole('link', { name: 'Climate of the store' }).click();
    await expect(page.getByRole('heading', { level: 1, name: `${STORE}: climate` })).toBeVisible();
    await page.goto(`${new URL(page.url()).pathname}?from=2023-11-15&to=2023-12-05`);
    await expect(page.getByRole('heading', { name: 'What it cost' })).toBeVisible();
    await expect(page.getByRole('columnheader', { name: 'It cost' })).toBeVisible();
    await expect(page.getByRole('heading', { name: 'The lots hit hardest' })).toBeVisible();
    expect(await alive(page, LOT)).toBeLessThan(before - 5);
  });

  await test.step('a script sends one more reading', async () => {
    await openReadings(page);
    await page.getByLabel('Name of the token').fill('shelf sensor');
    await page.getByRole('button', { name: 'Make a token' }).click();
    const token = (await page.getByText(/^hilum-readings-/).textContent()) ?? '';
    await looksRight(page);
    const send = (bearer: string) =>
      request.post('/api/readings', {
        headers: { Authorization: `Bearer ${bearer}` },
        data: { readings: [{ at: '2026-08-01T12:07:00Z', temperatureC: 12.1, humidityPercent: 50 }] },
      });
    expect((await send(`${token}x`)).status()).toBe(401);
    expect(await (await send(token)).json()).toMatchObject({ added: 1 });
    expect(await (await send(token)).json()).toMatchObject({ added: 0, alreadyThere: 1 });
    await page.reload();
    await expect(page.getByText(/shelf sensor made .*, last used/)).toBeVisible();
    await page.getByRole('button', { name: 'Revoke shelf sensor' }).click();
    await expect(page.getByText(/shelf sensor made .*, revoked/)).toBeVisible();
    expect((await send(token)).status()).toBe(401);
  });

  await test.step('the steward takes the file back, and the lot is as it was', async () => {
    await page
      .getByRole('row', { name: /pantry-november\.csv .* 216/ })
      .getByRole('link')
      .click();
    await page.getByRole('button', { name: 'Take these readings back' }).click();
    await expect(page.getByRole('row', { name: /taken back/ })).toBeVisible();
    expect(await alive(page, LOT)).toBe(before);
  });
});

test('a file of 15 MB is read, though a request of more than ten is cut off by default', async ({ page }) => {
  test.setTimeout(180_000);
  const rows = Array.from({ length: 400_000 }, (_, minute) => {
    const at = new Date(Date.UTC(2018, 0, 1, 0, minute)).toISOString().slice(0, 19);
    return `${at}Z;15.${minute % 10};45.5;seed`;
  });
  const buffer = Buffer.from(['at;temperature;humidity;place', ...rows, ''].join('\n'));
  expect(buffer.length).toBeGreaterThan(13e6);
  await page.goto('/stores');
  await page.getByRole('link', { name: 'Drying cupboard', exact: true }).first().click();
  await page.getByRole('link', { name: 'Readings', exact: true }).click();
  await page.getByLabel('A file from the logger').setInputFiles({ name: 'year.csv', mimeType: 'text/csv', buffer });
  await page.getByRole('button', { name: 'Read the file' }).click();
  await expect(page.getByText('400\u202f000 readings are new to this store.')).toBeVisible({ timeout: 60_000 });
});
