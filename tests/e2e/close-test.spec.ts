import { randomBytes } from 'node:crypto';
import type { Page } from '@playwright/test';
import { NOTHING_FOUND } from '../../lib/domain/germination/bench/tray-count';
import { uuidV7 } from '../../lib/domain/ids/uuid-v7';
import { expect, test } from './support/bank';
import { insertTest } from './support/insert-test';
import { insertTrays } from './support/insert-trays';
import { expectReadable, lookIn, MODES } from './support/readable';

const TRAY = 'T-9301';
const LOT = 'L-2014-002';

test.describe.configure({ mode: 'serial' });

const LATE = 'T-9302';
const LATE_LOT = 'L-2019-007';

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
    {
      ...{ number: LATE, lotNumber: LATE_LOT, setOn: '2026-11-09', firstCountOn: '2026-11-13' },
      ...{ finalCountOn: '2026-11-20', counts: [{ on: '2026-11-13', dish: 1, found: { normal: 30 } }] },
    },
  ]);
  insertHandWritten(bankDirectory, 'T-9399');
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

test('closing: what cannot be so is refused beside its box, and everything that was typed stays', async ({ page }) => {
  const countPath = `/germination/${LATE}/tray/count?on=2026-11-20`;
  await test.step('a day before it was set is refused beside the day', async () => {
    await page.goto(`/germination/${LATE}/tray/count?on=2026-11-01`);
    await boxOf(page, 1, 'normal').fill('3');
    await page.getByRole('button', { name: 'Save the counts' }).click();
    await expect(page.getByText('The tray was set on 2026-11-09: choose that day or a later one.')).toBeVisible();
    await expect(boxOf(page, 1, 'normal')).toHaveValue('3');
  });

  await test.step('a count that is no number, or more than can be, is refused beside its dish', async () => {
    await page.goto(countPath);
    await boxOf(page, 1, 'normal').fill('twelve');
    await boxOf(page, 1, 'abnormal').fill('2');
    await boxOf(page, 2, 'normal').fill('45');
    await page.getByLabel('Counted by').fill('Rory');
    await page.getByRole('button', { name: 'Save the counts' }).click();
    const dish = page.getByRole('group', { name: /^Dish 1/ });
    await expect(dish).toContainText('Write a number');
    await expect(boxOf(page, 1, 'normal')).toBeFocused();
    await expect(boxOf(page, 1, 'normal')).toHaveAttribute('aria-invalid', 'true');
    await expect(boxOf(page, 1, 'normal')).toHaveValue('twelve');
    await expect(boxOf(page, 1, 'abnormal')).toHaveValue('2');
    await expect(boxOf(page, 2, 'normal')).toHaveValue('45');
    await boxOf(page, 1, 'normal').fill('25');
    await page.getByRole('button', { name: 'Save the counts' }).click();
    await expect(dish).toContainText('at most 20 can be found on this day, not 27');
    await expect(boxOf(page, 2, 'normal')).toHaveValue('45');
    await expect(page.getByLabel('Counted by')).toHaveValue('Rory');
    await boxOf(page, 1, 'normal').fill('12');
    await page.getByLabel('What is left is dead').check();
    await page.getByRole('button', { name: 'Save the counts' }).click();
    await expect(page.getByRole('heading', { name: 'Ready to be closed' })).toBeVisible();
  });

  await test.step('the same test written down by hand is asked about; ticked, it is closed', async () => {
    await page.getByRole('button', { name: 'Close the test' }).click();
    const another = page.getByRole('checkbox', { name: 'It is another test: close this one too' });
    await expect(page.getByText(/T-9399 says the same of the same days, written down by hand/)).toBeVisible();
    await expect(another).toBeFocused();
    await expect(page.getByRole('heading', { name: 'Replicates' })).toHaveCount(0);
    await another.check();
    await page.getByRole('button', { name: 'Close the test' }).click();
    await expect(page.getByText(/87 in 100 seeds germinated/)).toBeVisible();
  });
});

test('a closed test shows its curve, its half time and its history; a late count is told, and taken in with a reason', async ({
  page,
}) => {
  test.setTimeout(120_000);
  const history = page.getByRole('region', { name: 'History' });

  await test.step('the curve has its band and T50, in the picture, in words and in figures', async () => {
    await page.goto(`/germination/${LATE}`);
    const course = page.getByRole('region', { name: 'Germination over days' });
    const said = (await course.getByText(/Half of the seeds that germinated did so by day/).textContent()) ?? '';
    const half = /by day ([\d.]+) \(/.exec(said)?.[1] ?? 'nothing';
    // Only dish 1 was looked at on day 4: 30 of its 42 were up by then, so half at 4 × (1/2) / (30/42).
    expect(half).toBe('2.8');
    const picture = course.getByRole('img', { name: new RegExp(`half of those had germinated by day ${half}`) });
    await expect(picture).toBeVisible();
    await expect(course).toContainText('likely for the lot (95 %, day by day)');
    await course.getByText('Speed, evenness and fitted curve in figures').click();
    await expect(course.getByRole('row', { name: /^T50/ })).toContainText(half);
  });

  await test.step('its history says who closed it', async () => {
    const [closed] = await history.getByRole('listitem').allTextContents();
    expect(closed).toMatch(/^Recorded T-9302 on lot L-2019-007 by closing its tray: 87 normal of 100 seedsSteward, \d/);
  });

  await test.step('a count that a phone sends later changes nothing by itself, and is told on test and tray', async () => {
    await sendFromPhone(page, { on: '2026-11-13', dish: 2, normal: 3 });
    await page.goto(`/germination/${LATE}`);
    await expect(page.getByText('A count came after the tray was closed')).toBeVisible();
    await expect(page.getByText(/87 in 100 seeds germinated/)).toBeVisible();
    await expect(page.getByRole('region', { name: 'Germination over days' })).toHaveCount(0);
    await readableInAllModes(page, `/germination/${LATE}`);
    await page.getByRole('link', { name: 'See the tray' }).click();
    await expect(page.getByText(/^dish 2, 13 Nov 2026: Steward 3 normal; received/)).toBeVisible();
    await readableInAllModes(page, `/germination/${LATE}/tray`);
  });

  await test.step('a reason that is too long stays to be shortened', async () => {
    const reason = 'the phone in the shed was off '.repeat(8);
    await page.getByLabel('Why').fill(reason);
    await page.getByRole('button', { name: 'Open this tray again' }).click();
    await expect(page.getByText('Shorten this to 200 characters.')).toBeVisible();
    await expect(page.getByLabel('Why')).toHaveValue(reason);
    await page.getByLabel('Why').fill('The phone in the shed was off');
    await page.getByRole('button', { name: 'Open this tray again' }).click();
    await expect(page.getByText('Dish 2: 3 more seeds were counted than set.')).toBeVisible();
  });

  await test.step('taken in, the test is corrected; the correction says why, and who', async () => {
    await page.goto(`/germination/${LATE}/tray/count?on=2026-11-20`);
    await boxOf(page, 2, 'dead').fill('2');
    await page.getByRole('button', { name: 'Save the counts' }).click();
    await page.getByRole('button', { name: 'Close the test' }).click();
    await expect(page.getByText(/90 in 100 seeds germinated/)).toBeVisible();
    await expect(page.getByRole('region', { name: 'Germination over days' })).toBeVisible();
    const lines = history.getByRole('listitem');
    await expect(lines.filter({ hasText: /^Corrected T-9302 as T-\d+ by closing tray T-9302 again/ })).toContainText(
      'Steward,',
    );
    await expect(lines.filter({ hasText: 'Reason: The phone in the shed was off' })).toContainText('Steward,');
    await expect(lines.filter({ hasText: /^Recorded T-9302/ })).toHaveCount(1);
  });
});

/** What a phone at the bench sends once it is in reach again. */
async function sendFromPhone(page: Page, { on, dish, normal }: { on: string; dish: number; normal: number }) {
  const count = {
    ...{ kind: 'count', id: uuidV7({ now: Date.now(), after: null, random: randomBytes(8) }) },
    ...{ trayId: `tray-${LATE}`, dishId: `tray-${LATE}-dish-${dish}`, on, replaces: [], places: null, countedBy: null },
    ...{ found: { ...NOTHING_FOUND, normal }, madeAt: `${on}T09:00:00.000Z` },
  };
  const answer = await page.request.post('/api/bench/entries', {
    data: { deviceId: 'phone-in-the-shed', entries: [count] },
  });
  expect((await answer.json()).answers).toMatchObject([{ outcome: 'kept' }]);
}

/** The finished test of a tray as somebody wrote it down from paper. */
const insertHandWritten = (bankDirectory: string, number: string) =>
  insertTest(bankDirectory, {
    number,
    lot: LATE_LOT,
    setOn: '2026-11-09',
    finishedOn: '2026-11-20',
    replicates: [
      { seeds: 50, normal: 42, abnormal: 2, dead: 6 },
      { seeds: 50, normal: 45, abnormal: 0, dead: 5 },
    ],
  });
