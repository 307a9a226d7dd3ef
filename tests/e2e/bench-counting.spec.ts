import type { Locator, Page } from '@playwright/test';
import { expect, test } from './support/bank';
import { countsHeld, insertTrays } from './support/insert-trays';
import { expectReadable, lookIn, MODES } from './support/readable';

/*
 * Times are counted after the keystroke-level model, from memory: 0.3 s for a tap with a wet thumb, 1.2 s for each dish to
 * make up one's mind. Looking at the seedlings comes on top, whatever is used to write them down.
 */
const SECONDS_A_TAP = 0.3;
const SECONDS_A_THOUGHT = 1.2;

const BEFORE = '2026-11-23';
const TODAY = '2026-11-25';
const NUMBERS = Array.from({ length: 12 }, (_, index) => `T-${9001 + index}`);
const [KEYPAD, TAPS, NOTES, FINAL, DISAGREE, DAYS, KEYBOARD, PLUS, LARGE, HARD, LAST, MANY] = NUMBERS as [
  string,
  string,
  string,
  string,
  string,
  string,
  string,
  string,
  string,
  string,
  string,
  string,
];
const four = [1, 2, 3, 4].map((dish) => ({ on: BEFORE, dish, found: { normal: 10 + dish } }));

test.use({ viewport: { width: 360, height: 740 } });

test.beforeAll(({ bankDirectory }) => {
  const plain = { dishes: [50, 50, 50, 50], countEveryDays: 2, counts: four };
  const final = { dishes: [25, 25], finalCountOn: TODAY, counts: four.slice(0, 2) };
  insertTrays(
    bankDirectory,
    NUMBERS.map((number, index) => ({
      ...([FINAL, HARD, LAST].includes(number) ? final : plain),
      number,
      // They are walked along in this order.
      place: `Counted by hand, ${String(index + 1).padStart(2, '0')}`,
    })),
  );
});

const open = async (page: Page, number: string) => {
  await page.goto(`/bench#${number}`);
  await expect(page.getByRole('heading', { level: 1 })).toContainText(number);
};
const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, exact: typeof name === 'string' });
const tally = (page: Page) => page.locator('[data-tally]');
const seed = (page: Page, place: number): Locator => page.locator('[data-dish] [data-mark]').nth(place);
/** In the middle of a place, which is bare where its seed was taken out. */
async function tapOn(place: Locator) {
  const box = await place.boundingBox();
  if (!box) throw new Error('that place is not in sight');
  await place.page().mouse.click(box.x + box.width / 2, box.y + box.height / 2);
}
const sent = (page: Page) => expect(page.locator('[data-link]')).toHaveText('Everything is sent.');

test('a tray of four dishes by keypad: 9 taps, in under ten seconds; then the next tray is there', async ({
  page,
  bankDirectory,
}) => {
  await open(page, KEYPAD);
  let taps = 0;
  const tap = async (...names: (string | RegExp)[]) => {
    for (const name of names) {
      await button(page, name).click();
      taps += 1;
    }
  };
  await tap('4', 'Next: dish 2');
  await tap(/None new: same/, 'Next: dish 3');
  await tap('7', 'Next: dish 4');
  await tap('1', '2', 'Done');
  await expect(page.getByRole('heading', { level: 1 })).toContainText(TAPS);
  await expect(page.getByText(`${KEYPAD} noted: 73 of 200 out, 23 today, 127 left.`)).toBeVisible();
  await sent(page);
  expect(countsHeld(bankDirectory, KEYPAD).filter((line) => line.startsWith(TODAY))).toEqual([
    `${TODAY} 1: 4/0/0/0/0`,
    `${TODAY} 2: 0/0/0/0/0`,
    `${TODAY} 3: 7/0/0/0/0`,
    `${TODAY} 4: 12/0/0/0/0`,
  ]);
  const seconds = taps * SECONDS_A_TAP + 4 * SECONDS_A_THOUGHT;
  test.info().annotations.push({ type: 'four dishes by keypad', description: `${taps} taps, ${seconds.toFixed(1)} s` });
  expect(taps).toBeLessThanOrEqual(9);
  expect(seconds).toBeLessThan(10);

  await test.step('a whole tray with nothing new takes two taps', async () => {
    await open(page, MANY);
    taps = 0;
    await tap('None new in all 4', 'Done');
    const two = taps * SECONDS_A_TAP + SECONDS_A_THOUGHT;
    test.info().annotations.push({ type: 'nothing new', description: `${taps} taps, ${two.toFixed(1)} s` });
    expect(taps).toBe(2);
    await sent(page);
    expect(countsHeld(bankDirectory, MANY).filter((line) => line.startsWith(TODAY))).toHaveLength(4);
  });
});

test('seeds under the finger: a tap finds, a second puts back, a swipe takes several, undo takes back', async ({
  page,
}) => {
  await open(page, TAPS);
  await expect(tally(page)).toContainText('11 of 50 out, not counted today, 39 left.');
  await expect(page.locator('[data-mark="gone"]')).toHaveCount(11);
  await tapOn(seed(page, 20));
  await expect(tally(page)).toContainText('12 of 50 out, 1 today, 38 left.');
  await expect(seed(page, 20)).toHaveAttribute('data-mark', 'normal');
  await tapOn(seed(page, 20));
  await expect(tally(page)).toContainText('11 of 50 out, none today, 39 left.');
  await expect(seed(page, 20)).toHaveAttribute('data-mark', 'left');

  await test.step('an emptied place says so', async () => {
    await tapOn(page.locator('[data-mark="gone"]').first());
    await expect(tally(page)).toContainText('That place is empty');
  });

  await test.step('another class is chosen first; its shape differs', async () => {
    await page.getByRole('radio', { name: /^abnormal/ }).check();
    await tapOn(seed(page, 30));
    await expect(seed(page, 30)).toHaveAttribute('data-mark', 'abnormal');
    await page.getByRole('radio', { name: /^normal/ }).check();
    await tapOn(seed(page, 30));
    await expect(seed(page, 30)).toHaveAttribute('data-mark', 'normal');
    await expect(tally(page)).toContainText('12 of 50 out, 1 today, 38 left.');
  });

  await test.step('a swipe in one leap passes over no seed and is one undo', async () => {
    const dish = (await page.locator('[data-dish]').boundingBox()) as {
      x: number;
      y: number;
      width: number;
      height: number;
    };
    const reach = Math.min(dish.width, dish.height) * 0.35;
    const middle = { x: dish.x + dish.width / 2, y: dish.y + dish.height / 2 };
    const before = await page.locator('[data-mark="normal"]').count();
    await page.mouse.move(middle.x - reach, middle.y);
    await page.mouse.down();
    await page.mouse.move(middle.x + reach, middle.y);
    await page.mouse.up();
    const after = await page.locator('[data-mark="normal"]').count();
    expect(after - before).toBeGreaterThanOrEqual(3);
    await expect(tally(page)).toContainText(`${after} today`);
    await button(page, 'Undo').click();
    await expect(tally(page)).toContainText('Taken back.');
    await expect(tally(page)).toContainText('12 of 50 out, 1 today, 38 left.');
  });

  await test.step('what was entered is there after the page was loaded again', async () => {
    await page.reload();
    await button(page, /^Dish 1:/).click();
    await expect(tally(page)).toContainText('12 of 50 out, 1 today, 38 left.');
    await expect(seed(page, 30)).toHaveAttribute('data-mark', 'normal');
  });
});

test('plus, minus and digits keep to what the dish holds, and say why', async ({ page }) => {
  await open(page, PLUS);
  await button(page, 'One normal less').click();
  await expect(tally(page)).toContainText('No normal seed is counted today.');
  for (let taps = 0; taps < 3; taps += 1) await button(page, 'One normal more').click();
  await button(page, 'One normal less').click();
  await expect(tally(page)).toContainText('13 of 50 out, 2 today, 37 left.');

  await test.step('more than were set is not taken', async () => {
    await button(page, '5').click();
    await button(page, '8').click();
    await expect(tally(page)).toContainText('58 cannot be: dish 1 was set with 50 seeds. It stays at 5 normal.');
    await expect(tally(page)).toContainText('16 of 50 out, 5 today');
  });

  await test.step('more than is left is taken and said, with the day that may be wrong', async () => {
    await button(page, 'Last digit away').click();
    for (const digit of ['4', '5']) await button(page, digit).click();
    const trouble = page.getByRole('alert').filter({ hasText: '6 too many.' });
    await expect(trouble).toContainText('Dish 1 was set with 50 seeds, and 56 are written down.');
    await trouble.getByRole('button', { name: '23 Nov: 11' }).click();
    await expect(page.getByText('Counting for 23 Nov')).toBeVisible();
    await button(page, '5').click();
    await expect(tally(page)).toContainText('50 of 50 out, 5 on 23 Nov, 0 left.');
    await button(page, 'back to today').click();
    await button(page, 'One normal more').click();
    await expect(tally(page)).toContainText('All 50 seeds of dish 1 are counted.');
  });

  await test.step('digits typed in one go are taken back in one go', async () => {
    await button(page, /^Dish 2:/).click();
    for (const digit of ['1', '2']) await button(page, digit).click();
    await expect(tally(page)).toContainText('24 of 50 out, 12 today, 26 left.');
    await button(page, 'Undo').click();
    await expect(tally(page)).toContainText('12 of 50 out, not counted today, 38 left.');
  });
});

test('at the final count every seed gets a class, none by itself; then the test can be closed', async ({
  page,
  bankDirectory,
}) => {
  await open(page, FINAL);
  await expect(page.getByRole('radio')).toHaveCount(5);
  await button(page, '9').click();
  await page.getByRole('radio', { name: /^fresh/ }).check();
  await button(page, '2').click();
  await expect(tally(page)).toContainText('22 of 25 out, 11 today, 3 left.');
  await button(page, 'Next: dish 2').click();
  await button(page, '8').click();
  await button(page, 'Done').click();
  const missing = page.getByRole('region', { name: 'Not done yet' });
  await expect(missing).toContainText('Dish 1: 3 seeds are not classed yet.');
  await expect(missing).toContainText('Dish 2: 5 seeds are not classed yet.');
  await expect(page.getByText('Ready to close.')).toBeHidden();
  await button(page, 'Rest are dead (5)').click();
  await button(page, 'To dish 1')
    .or(button(page, /^Dish 1:/))
    .first()
    .click();
  await button(page, 'Rest are dead (3)').click();
  await expect(page.getByText('Ready to close.')).toBeVisible();
  await expect(page.getByRole('link', { name: /close the test/ })).toHaveAttribute('href', `/germination/${FINAL}`);
  await button(page, 'Done').click();
  await sent(page);
  expect(countsHeld(bankDirectory, FINAL).filter((line) => line.startsWith(TODAY))).toEqual([
    `${TODAY} 1: 9/0/0/2/3`,
    `${TODAY} 2: 8/0/0/0/5`,
  ]);
});

test('two phones that counted one dish are asked about, and one tap says what holds', async ({
  page,
  browser,
  bankDirectory,
}) => {
  const other = await browser.newContext();
  const second = await other.newPage();
  await open(page, DISAGREE);
  await open(second, DISAGREE);
  await second.context().setOffline(true);
  await button(second, '5').click();
  await expect(second.locator('[data-link]')).toContainText('No connection');
  await button(page, '7').click();
  await sent(page);
  await second.context().setOffline(false);
  await expect(second.getByText(/counted 7/)).toBeVisible({ timeout: 40_000 });
  const asked = second.getByRole('region', { name: 'Counts disagree' });
  await expect(asked).toContainText(/counted 5.*counted 7|counted 7.*counted 5/);
  await expect(button(second, 'One normal more')).toBeHidden();
  await asked.getByRole('button', { name: '12: both, one after the other' }).click();
  await expect(tally(second)).toContainText('23 of 50 out, 12 today, 27 left.');
  await sent(second);
  expect(countsHeld(bankDirectory, DISAGREE).filter((line) => line.startsWith(TODAY))).toEqual([
    `${TODAY} 1: 12/0/0/0/0`,
  ]);
  await other.close();
});

test('another day is looked at, corrected and taken back; a day that was forgotten is added', async ({
  page,
  bankDirectory,
}) => {
  await open(page, DAYS);
  await button(page, '23 Nov: 50').click();
  await expect(page.getByText('Counting for 23 Nov')).toBeVisible();
  await expect(page.locator('[data-mark="normal"]')).toHaveCount(11);
  await button(page, 'One normal more').click();
  await expect(tally(page)).toContainText('12 of 50 out, 12 on 23 Nov, 38 left.');
  await button(page, /^Dish 2:/).click();
  await button(page, 'Take back dish 2, 23 Nov').click();
  await expect(tally(page)).toContainText('0 of 50 out, not counted on 23 Nov, 50 left.');
  await page.getByLabel('a day that is not there').fill('2026-11-24');
  await expect(page.getByText('Counting for 24 Nov')).toBeVisible();
  await button(page, '3').click();
  await sent(page);
  expect(countsHeld(bankDirectory, DAYS)).toEqual([
    `${BEFORE} 1: 12/0/0/0/0`,
    `${BEFORE} 3: 13/0/0/0/0`,
    `${BEFORE} 4: 14/0/0/0/0`,
    '2026-11-24 2: 3/0/0/0/0',
  ]);
});

test('a note that is half written survives; note and photo are kept with their dish', async ({ page }) => {
  await open(page, NOTES);
  await button(page, /^Dish 2:/).click();
  const note = page.getByLabel(/^Note on dish 2/);
  await note.fill('Mould at the rim, 3 or 4 seeds');
  await page.reload();
  await button(page, /^Dish 2:/).click();
  await expect(note).toHaveValue('Mould at the rim, 3 or 4 seeds');
  await button(page, 'Add the note').click();
  const notes = page.getByRole('region', { name: 'Notes and photos' });
  await expect(notes.getByRole('listitem')).toContainText(['Mould at the rim, 3 or 4 seeds']);
  await expect(notes.getByRole('listitem')).toContainText('dish 2, 25 Nov');
  await expect(tally(page), 'digits in a note count nothing').toContainText('12 of 50 out, not counted today');

  await test.step('a large picture is made smaller before it is sent', async () => {
    const large = await page.evaluate(async () => {
      const canvas = document.createElement('canvas');
      canvas.width = 4000;
      canvas.height = 1000;
      canvas.getContext('2d')?.fillRect(0, 0, 2000, 500);
      return canvas.toDataURL('image/png').split(',')[1] as string;
    });
    const posted = page.waitForRequest((request) => request.url().includes('/api/bench/photos'));
    await page.getByLabel('Photo of dish 2').setInputFiles({
      name: 'dish.png',
      mimeType: 'image/png',
      buffer: Buffer.from(large, 'base64'),
    });
    await expect(notes.getByRole('listitem')).toHaveCount(2);
    const photo = await posted;
    expect(photo.headers()['content-type']).toBe('image/jpeg');
    expect((await photo.response())?.status()).toBe(200);
    await sent(page);
    const [width, height] = await page.evaluate(async () => {
      const { trays } = await (await fetch('/api/bench')).json();
      const { id } = trays
        .flatMap((tray: { notes: { kind: string; id: string }[] }) => tray.notes)
        .find((one: { kind: string }) => one.kind === 'photo');
      const picture = await createImageBitmap(await (await fetch(`/api/bench/photos/${id}`)).blob());
      return [picture.width, picture.height];
    });
    expect(width).toBeLessThanOrEqual(2000);
    expect(width).toBe(4 * (height as number));
  });

  await test.step('what is no picture is refused in words', async () => {
    await page.getByLabel('Photo of dish 2').setInputFiles({
      name: 'notes.png',
      mimeType: 'image/png',
      buffer: Buffer.from('no picture'),
    });
    await expect(page.getByText('This picture cannot be read here.')).toBeVisible();
  });
});

test('by keyboard alone: from the list through a tray to the next', async ({ page, bankDirectory }) => {
  await page.goto('/bench');
  await page.getByLabel(/^Find a tray/).focus();
  await page.keyboard.type(KEYBOARD.slice(2));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toContainText(KEYBOARD);
  for (const key of [
    '4',
    'Enter',
    '=',
    'Enter',
    '1',
    '2',
    'Backspace',
    'a',
    'ArrowUp',
    'ArrowUp',
    'ArrowDown',
    'Enter',
  ]) {
    await page.keyboard.press(key);
  }
  await expect(tally(page)).toContainText('Dish 4: 14 of 50 out, not counted today, 36 left.');
  await page.keyboard.press('9');
  await page.keyboard.press('u');
  await expect(tally(page)).toContainText('not counted today');
  await page.keyboard.press('?');
  await expect(page.getByRole('dialog', { name: 'Keys' })).toBeVisible();
  await page.keyboard.press('3');
  await page.keyboard.press('Escape');
  await expect(tally(page), 'keys do nothing behind their own list').toContainText('not counted today');
  await page.keyboard.press('ArrowLeft');
  await expect(tally(page)).toContainText('Dish 3: 15 of 50 out, 2 today, 35 left.');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('6');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).not.toContainText(KEYBOARD);
  await sent(page);
  expect(countsHeld(bankDirectory, KEYBOARD).filter((line) => line.startsWith(TODAY))).toEqual([
    `${TODAY} 1: 4/0/0/0/0`,
    `${TODAY} 2: 0/0/0/0/0`,
    `${TODAY} 3: 1/1/0/0/0`,
    `${TODAY} 4: 6/0/0/0/0`,
  ]);
});

test('going back leads to the list, where it was left, and a scanned label opens its tray', async ({ page }) => {
  await page.goto('/bench');
  const row = page.getByRole('listitem').filter({ hasText: LARGE }).getByRole('link');
  await row.scrollIntoViewIfNeeded();
  const scrolled = await page.evaluate(() => scrollY);
  await row.click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText(LARGE);
  await button(page, 'None new in all 4').click();
  await button(page, 'Done').click();
  await expect(page.getByRole('heading', { level: 1 })).not.toContainText(LARGE);
  await page.goBack();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Bench');
  expect(await page.evaluate(() => scrollY)).toBe(scrolled);
  await expect(row).toContainText('counted today');
  await page.goto(`/bench#${HARD.toLowerCase()}`);
  await expect(page.getByRole('heading', { level: 1 })).toContainText(HARD);
  await page.goto('/bench#T-0000');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('T-0000 is not open');
});

test('readable at 360 px with the largest letters, lying on its side, and on phone and laptop, light and dark', async ({
  page,
}) => {
  test.setTimeout(180_000);
  for (const address of ['/bench', `/bench#${LAST}`, `/bench#${MANY}`]) {
    await page.goto('about:blank');
    await page.goto(address);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    for (const mode of MODES) {
      await lookIn(page, mode);
      await expectReadable(page, `${address}, ${mode.width} px, ${mode.colorScheme}`);
    }
    await page.setViewportSize({ width: 740, height: 360 });
    await expectReadable(page, `${address}, on its side`);
    await page.setViewportSize({ width: 360, height: 740 });
    await page.addStyleTag({ content: 'html { font-size: 200% !important; }' });
    await expectReadable(page, `${address}, 360 px, letters of double size`);
    const small = await page
      .locator('main :is(button, a, summary, textarea, label:has(input[type="radio"], input[type="file"]))')
      .evaluateAll((all) =>
        all
          .map((one) => ({ box: one.getBoundingClientRect(), said: one.textContent ?? '' }))
          .filter(({ box }) => box.width > 0 && (box.width < 44 || box.height < 44 || box.right > innerWidth))
          .map(({ box, said }) => `${said}: ${Math.round(box.width)} x ${Math.round(box.height)}`),
      );
    expect(small, `${address}: targets under 44 px or cut off`).toEqual([]);
  }
});
