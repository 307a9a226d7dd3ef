import type { Page } from '@playwright/test';
import { renderPdf } from '../support/labels/render-pdf';
import { expect, test } from './support/bank';
import { insertTest } from './support/insert-test';
import { insertTrays } from './support/insert-trays';
import { expectReadable, lookIn, MODES } from './support/readable';

/* The sheet of paper about a test: one page where it fits, and pages that can be read where it does not. */
test.use({ ownBank: 'certificate' });

const USUAL = 'T-9401';
const WORDY = 'T-9402';
const LONG = 'T-9403';
const LOT = 'L-2019-007';
const FORMATS = ['A4', 'Letter'] as const;

const NOTES = Array.from(
  { length: 40 },
  (_, index) =>
    `Note ${index + 1}: dish ${1 + (index % 8)} was turned, its paper was changed, and two seeds at the rim were looked at under the lens before they were left to stand.`,
);
/** More replicates than a page has lines. */
const REPLICATES = 90;

test.beforeAll(({ bankDirectory }) => {
  const found = { normal: 21, abnormal: 1, fresh: 1, dead: 2 };
  const tray = {
    ...{ lotNumber: LOT, setOn: '2026-11-09', firstCountOn: '2026-11-13', finalCountOn: '2026-11-20' },
    dishes: Array.from({ length: 8 }, () => 25),
    counts: Array.from({ length: 8 }, (_, index) => ({ on: '2026-11-20', dish: index + 1, found })),
  };
  insertTrays(bankDirectory, [
    { ...tray, number: USUAL, notes: 'Dish 5 stood near the door.' },
    { ...tray, number: WORDY, notes: NOTES.join('\n'), setOn: '2026-11-08' },
  ]);
  insertLongTest(bankDirectory);
});

async function close(page: Page, tray: string): Promise<void> {
  await page.goto(`/germination/${tray}`);
  await page.getByRole('button', { name: 'Close the test' }).click();
  await expect(page.getByRole('heading', { name: 'Replicates' })).toBeVisible();
}

/** Without spaces: where a page holds nothing but figures, a reader of the file takes each sign for a line. */
const squeezed = (text: string) => text.replace(/\s/g, '');
const times = (text: string, part: string) => text.split(squeezed(part)).length - 1;

/** What each sheet says, without spaces. */
async function sheetsOf(page: Page, number: string, format: (typeof FORMATS)[number]): Promise<string[]> {
  await page.goto(`/germination/${number}/certificate`);
  await expect(page.getByText('Place and date')).toBeVisible();
  const pages = await renderPdf(await page.pdf({ format }), 36);
  return pages.map(({ text }) => squeezed(text));
}

/** On each sheet: which one it is, and no heading at its foot; on the last, who signs for what. */
function expectWholeSheets(sheets: string[], number: string, format: string): void {
  for (const [index, sheet] of sheets.entries()) {
    const which = squeezed(`page ${index + 1} of ${sheets.length}`);
    expect(sheet, format).toContain(which);
    expect(sheet.replace(which, ''), format).not.toMatch(/(Result|Notes|Dothereplicatesagree\?|fresh|dead)$/);
  }
  expect(times(sheets.join(''), 'Place and date'), format).toBe(1);
  const end = ['Signed', 'Place and date', `Germination test ${number} of lot ${LOT}`, 'whoever local law names.'];
  for (const part of end) expect(sheets.at(-1), format).toContain(squeezed(part));
}

test('a test of eight dishes is one page of A4 and of Letter', async ({ page }) => {
  await close(page, USUAL);
  for (const format of FORMATS) {
    const sheets = await sheetsOf(page, USUAL, format);
    expect(sheets, format).toHaveLength(1);
    expectWholeSheets(sheets, USUAL, format);
    expect(times(sheets.join(''), '8 25 21 1 0 1 2'), format).toBe(1);
  }
});

test('long notes go on to further sheets: none is lost or torn, no heading stands alone, the signature stays whole', async ({
  page,
}) => {
  await close(page, WORDY);
  for (const format of FORMATS) {
    const sheets = await sheetsOf(page, WORDY, format);
    expect(sheets, format).toHaveLength(3);
    expectWholeSheets(sheets, WORDY, format);
    for (const note of NOTES) {
      const held = sheets.map((sheet) => times(sheet, note));
      expect(
        held.filter((count) => count > 0),
        `${format}: ${note}`,
      ).toEqual([1]);
    }
  }
  for (const mode of MODES) {
    await lookIn(page, mode);
    await expectReadable(page, `a certificate with long notes, ${mode.width} px, ${mode.colorScheme}`);
  }
});

test('a table longer than a page breaks between its rows; its heading is repeated, its sum is not', async ({
  page,
}) => {
  for (const format of FORMATS) {
    const sheets = await sheetsOf(page, LONG, format);
    expect(sheets, format).toHaveLength(3);
    expectWholeSheets(sheets, LONG, format);
    const all = sheets.join('');
    for (let position = 1; position <= REPLICATES; position++) {
      const row = `${position} ${seedsOf(position)} ${seedsOf(position) - 7} 0 0 0 7`;
      expect(times(all, row), `${format}: ${row}`).toBe(1);
    }
    for (const sheet of sheets) expect(times(sheet, 'replicate seeds normal abnormal hard fresh dead'), format).toBe(1);
    expect(times(all, `together ${SEEDS_TOGETHER}`), format).toBe(1);
  }
  // Chromium lays what follows a broken table on its last rows where both stand in a grid: on paper they must not.
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('.paper-upright')).toHaveCSS('display', 'block');
});

const SEEDS_TOGETHER = 94_095;
/** No two rows share a figure, so each can be told in a sheet without spaces. */
const seedsOf = (position: number) => 1000 + position;

/** Written down by hand, of more dishes than a tray has. */
const insertLongTest = (bankDirectory: string) =>
  insertTest(bankDirectory, {
    number: LONG,
    lot: LOT,
    setOn: '2026-10-09',
    finishedOn: '2026-10-20',
    replicates: Array.from({ length: REPLICATES }, (_, index) => {
      const seeds = seedsOf(index + 1);
      return { seeds, normal: seeds - 7, abnormal: 0, dead: 7 };
    }),
  });
