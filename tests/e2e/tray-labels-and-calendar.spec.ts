import { readCode } from '../../lib/domain/labels/read-code';
import { decodeCodes } from '../support/labels/decode';
import { renderPdf } from '../support/labels/render-pdf';
import { dateOf, only, readCalendar } from '../support/read-calendar';
import { expect, test } from './support/bank';
import { labelPicture, pngOf } from './support/label-film';
import { expectReadable, lookIn, MODES } from './support/readable';

// What is to be counted today is counted here.
test.use({ ownBank: 'tray-labels' });

/** Trays of the demo: leek whose first count is two days late, lettuce at its last count, clover that was closed. */
const LATE = 'T-0224';
const LAST_COUNT = 'T-0225';
const CLOSED = 'T-0222';

const pdfOf = async (address: string, query: string) => {
  const answer = await fetch(`${address}/api/labels?${query}`);
  expect(answer.status).toBe(200);
  expect(answer.headers.get('content-type')).toBe('application/pdf');
  return new Uint8Array(await answer.arrayBuffer());
};

test('labels of trays are chosen, seen and printed, one a dish, and a decoder reads tray and dish from each', async ({
  page,
  server,
}) => {
  await page.goto('/germination/labels');
  await page.getByLabel(new RegExp(`^${LATE}`)).check();
  await page.getByLabel(new RegExp(`^${LAST_COUNT}`)).check();
  await page.getByRole('button', { name: 'Show their labels' }).click();
  await expect(page.getByText('2 trays, 8 dishes')).toBeVisible();
  await expect(page.getByRole('img', { name: 'Preview of sheet 1 of 1: 8 labels' })).toBeVisible();
  expect(new URL(page.url()).searchParams.get('trays')).toBe(`${LAST_COUNT},${LATE}`);

  await page.getByLabel('Begin at label').fill('20');
  await page.getByRole('button', { name: 'Show' }).click();
  await expect(page.getByRole('img', { name: 'Preview of sheet 1 of 2: 5 labels' })).toBeVisible();
  await expect(page.getByText('2 trays, 8 dishes')).toBeVisible();

  const pages = await renderPdf(await pdfOf(server.address, `trays=${LATE},${LAST_COUNT}&format=roll-62x29`), 203);
  const read = await Promise.all(pages.map(async (label) => readCode((await decodeCodes(label))[0] ?? '')));
  const dishes = (number: string) => [1, 2, 3, 4].map((dish) => ({ kind: 'tray', number, dish }));
  expect(read).toEqual([...dishes(LATE), ...dishes(LAST_COUNT)]);
  expect(pages[0]?.text).toContain('Northbie Winter');
  expect(pages[0]?.text).toContain('dish 1 of 4');

  await page.getByRole('link', { name: `leave out ${LATE}` }).click();
  await expect(page.getByText('1 tray, 4 dishes')).toBeVisible();
});

test('the code of a dish leads where its test is: to the bench, to its result, or to words', async ({
  page,
  server,
}) => {
  await test.step('a photograph of the label', async () => {
    await page.goto('/stores/scan');
    const buffer = pngOf(await labelPicture(await pdfOf(server.address, `trays=${LAST_COUNT}&format=roll-62x29`)));
    await page
      .getByLabel('Take a picture of the label')
      .setInputFiles({ name: 'label.png', mimeType: 'image/png', buffer });
    const card = page.getByRole('region', { name: `Found tray ${LAST_COUNT}` });
    await expect(card).toBeVisible({ timeout: 30_000 });
    await expect(card).toContainText('1 of 4');
    await expect(card).toContainText('today, the last count');
    await expect(card.getByRole('link', { name: 'Count it' })).toHaveAttribute('href', `/bench#${LAST_COUNT}`);
  });

  await test.step('the address on the label', async () => {
    await page.goto(`/t/${LATE}-2`);
    await expect(page).toHaveURL(`${server.address}/bench#${LATE}`);
    await page.goto(`/t/${CLOSED}`);
    await expect(page).toHaveURL(`${server.address}/germination/${CLOSED}`);
    const answer = await page.goto('/t/T-9999-1');
    expect(answer?.status()).toBe(404);
    await expect(page.getByRole('heading', { name: 'No such test' })).toBeVisible();
  });
});

test('Today tells what is to be counted, the bench one tap away', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto('/');
  const bench = page.getByRole('region', { name: 'To count today 4' });
  await expect(bench.getByRole('listitem').first()).toContainText('2 days late');
  await expect(bench.getByRole('link', { name: /Northbie Winter/ })).toHaveAttribute('href', `/bench#${LATE}`);
  const tap = page.getByRole('banner').getByRole('link', { name: 'Count at the bench' });
  const box = await tap.boundingBox();
  expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(44);
  await tap.click();
  await expect(page).toHaveURL(/\/bench$/);
});

test.describe('the calendar of counts', () => {
  for (const mode of MODES) {
    test(`is readable at ${mode.width} px, ${mode.colorScheme}, as are the labels`, async ({ page }) => {
      await lookIn(page, mode);
      await page.goto('/germination/calendar');
      await expect(page.getByRole('region', { name: 'Late: count first' })).toContainText(LATE);
      await expect(page.getByRole('region', { name: /today$/ })).toContainText('last count');
      await expect(page.getByRole('table', { name: 'Counts of 4 weeks' })).toBeVisible({ visible: mode.width > 700 });
      await expectReadable(page, 'the calendar');
      await page.goto('/germination/labels');
      await expectReadable(page, 'the choice of trays');
      await page.goto(`/germination/labels?trays=${LATE}`);
      await expectReadable(page, 'the labels of a tray');
    });
  }

  test('goes on to later weeks and back', async ({ page }) => {
    await page.goto('/germination/calendar');
    await page.getByRole('link', { name: 'Later weeks' }).click();
    await expect(page.getByText('21 Dec 2026 to 17 Jan 2027')).toBeVisible();
    await expect(page.getByRole('region', { name: 'Late: count first' })).toBeVisible();
    await page.getByRole('link', { name: 'Earlier weeks' }).click();
    await expect(page.getByText('25 Nov 2026 to 20 Dec 2026')).toBeVisible();
    for (const nonsense of ['x', '0000-00-00', '9999-12-31', '1066-10-14']) {
      expect((await page.goto(`/germination/calendar?from=${nonsense}`))?.status()).toBe(200);
    }
  });

  test('is read by a calendar program without signing in, until its address is revoked', async ({ page, server }) => {
    await page.goto('/germination/calendar');
    await page.getByRole('button', { name: 'Make an address' }).click();
    await expect(page.getByText('Fill this in.')).toBeVisible();
    await page.getByLabel('Name of the calendar').fill('seed room tablet');
    await page.getByRole('button', { name: 'Make an address' }).click();
    const address = (await page.getByText(/\/api\/calendar\/.*\.ics$/).textContent()) ?? '';
    expect(address.startsWith(server.address)).toBe(true);

    const answer = await fetch(address);
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-type')).toContain('text/calendar');
    const events = readCalendar(await answer.text()).components.map((event) => [
      dateOf(event, 'DTSTART'),
      only(event, 'SUMMARY').text,
    ]);
    expect(events).toContainEqual(['2026-11-23', `Late: Count ${LATE} Northbie Winter`]);
    expect(events).toContainEqual(['2026-11-25', `Last count of ${LAST_COUNT} Old Manse Bronze`]);
    expect(events.join()).not.toContain(CLOSED);

    await page.goto('/germination/calendar');
    await expect(page.getByText(address)).toBeHidden();
    await expect(page.getByText('last seen reading')).toBeVisible();
    await page.getByRole('button', { name: 'Revoke seed room tablet' }).click();
    await expect(page.getByRole('button', { name: 'Revoke seed room tablet' })).toBeHidden();
    expect((await fetch(address)).status).toBe(404);
  });
});
