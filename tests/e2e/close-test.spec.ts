import type { Page } from '@playwright/test';
import { expect, test } from './support/bank';
import { insertTrays } from './support/insert-trays';
import { expectReadable, lookIn, MODES } from './support/readable';

const TRAY = 'T-9301';
const LOT = 'L-2014-002';

test.beforeAll(({ bankDirectory }) => {
  insertTrays(bankDirectory, [
    {
      ...{ number: TRAY, lotNumber: LOT, setOn: '2026-11-09', firstCountOn: '2026-11-13', finalCountOn: '2026-11-20' },
      counts: [
        { on: '2026-11-13', dish: 1, found: { normal: 30 } },
        { on: '2026-11-13', dish: 2, found: { normal: 28 } },
        // A second phone, which did not know of the first.
        { on: '2026-11-13', dish: 2, found: { normal: 31 } },
        { on: '2026-11-20', dish: 1, found: { normal: 12, abnormal: 2, fresh: 1, dead: 5 } },
      ],
    },
  ]);
});

/** The last line of the lot's own judgement: when it is due again, or why it is not. */
const nextTest = async (page: Page) => {
  await page.goto(`/collection/lots/${LOT}`);
  return page.getByRole('region', { name: 'Forecast' }).textContent();
};

async function readableInAllModes(page: Page, address: string): Promise<void> {
  await page.goto(address);
  for (const mode of MODES) {
    await lookIn(page, mode);
    await expectReadable(page, `${address}, ${mode.width} px, ${mode.colorScheme}`);
  }
}

const boxOf = (page: Page, dish: number, seedClass: string) =>
  page.getByRole('group', { name: new RegExp(`^Dish ${dish}`) }).getByLabel(seedClass, { exact: true });

test('a test is settled, closed, opened again with a reason, and closed again; its sheet of paper says so', async ({
  page,
}) => {
  test.setTimeout(180_000);
  const before = await nextTest(page);

  await test.step('two counts disagree: the page asks which holds', async () => {
    await page.goto(`/germination/${TRAY}`);
    await expect(page.getByText('two counts of 13 Nov 2026 disagree')).toBeVisible();
    await expect(page.getByRole('button', { name: 'Close the test' })).toHaveCount(0);
  });

  await test.step('a tray under way and its form are readable on phone and laptop, light and dark', async () => {
    await readableInAllModes(page, `/germination/${TRAY}`);
    await readableInAllModes(page, `/germination/${TRAY}/tray/count?on=2026-11-20`);
  });

  await test.step('somebody says which holds', async () => {
    await page.goto(`/germination/${TRAY}`);
    await page.getByLabel('Moss: 31 normal').check();
    await page.getByRole('button', { name: 'This one holds' }).click();
    await expect(page.getByText('disagree', { exact: false })).toHaveCount(0);
    await expect(page.getByText('Dish 2: 19 seeds are not classed yet.')).toBeVisible();
  });

  await test.step('the last day is written down from paper; too many are refused beside their dish', async () => {
    await page.goto(`/germination/${TRAY}/tray/count?on=2026-11-20`);
    await boxOf(page, 2, 'normal').fill('20');
    await page.getByRole('button', { name: 'Save the counts' }).click();
    await expect(page.getByText(/at most 19 can be found on this day, not 20/)).toBeVisible();
    await boxOf(page, 2, 'normal').fill('9');
    await page.getByLabel('What is left is dead').check();
    await page.getByRole('button', { name: 'Save the counts' }).click();
    await expect(page.getByRole('heading', { name: 'Ready to be closed' })).toBeVisible();
  });

  await test.step('closed, it is a finished test, and the lot is judged anew', async () => {
    await page.getByRole('button', { name: 'Close the test' }).click();
    await expect(page.getByText(/82 in 100 seeds germinated/)).toBeVisible();
    await expect(page.getByRole('heading', { name: 'What did we learn?' })).toBeVisible();
    await expect(page.getByRole('link', { name: 'Write down a tetrazolium or cut test' })).toBeVisible();
    await readableInAllModes(page, `/germination/${TRAY}`);
    expect(await nextTest(page)).not.toBe(before);
  });

  await test.step('it is opened again with a reason, and speaks on until it is closed', async () => {
    await page.goto(`/germination/${TRAY}/tray`);
    await page.getByText('Open it again').click();
    await page.getByRole('button', { name: 'Open this tray again' }).click();
    await expect(page.getByText('Say why it must be opened again: others will ask.')).toBeVisible();
    await page.getByLabel('Why').fill('Dish 2 was misread');
    await page.getByRole('button', { name: 'Open this tray again' }).click();
    await expect(page.getByText('This tray is open again.')).toBeVisible();
    await page.goto(`/germination/${TRAY}`);
    await expect(page.getByText('Its tray is open again.')).toBeVisible();
  });

  await test.step('corrected and closed again, a further test takes its place', async () => {
    await page.goto(`/germination/${TRAY}/tray/count?on=2026-11-20`);
    await boxOf(page, 2, 'normal').fill('4');
    await boxOf(page, 2, 'dead').fill('15');
    await page.getByRole('button', { name: 'Save the counts' }).click();
    await page.getByRole('button', { name: 'Close the test' }).click();
    await expect(page.getByText(/77 in 100 seeds germinated/)).toBeVisible();
    await expect(page.getByText('This is a correction; it speaks for the lot.')).toBeVisible();
    expect(page.url()).not.toContain(TRAY);
  });

  await test.step('its sheet of paper is one page of A4 and of Letter, and the old one says that it was corrected', async () => {
    const address = new URL(page.url()).pathname;
    await readableInAllModes(page, `${address}/certificate`);
    await expect(page.getByText('This is no official seed-testing certificate')).toBeVisible();
    for (const format of ['A4', 'Letter']) {
      const pdf = await page.pdf({ format });
      expect(pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g), format).toHaveLength(1);
    }
    await page.goto(`/germination/${TRAY}/certificate`);
    await expect(page.getByText(/This test was corrected by T-/)).toBeVisible();
  });
});
