import type { Page } from '@playwright/test';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { expect, test } from './support/bank';
import { countsHeld, insertTrays } from './support/insert-trays';
import { TEST_TODAY } from './support/prepare-banks';

/*
 * Any sequence of taps, typed numbers, undos, reloads and spells without a connection: what the screen shows is what was
 * entered, all the time, and in the end the server holds it. The rules are written down here once more, plainly.
 * HILUM_FUZZ_STEPS and HILUM_FUZZ_SEED run longer and other sequences.
 */
const STEPS = Number(process.env.HILUM_FUZZ_STEPS ?? 90);
const SEEDS = process.env.HILUM_FUZZ_SEED ? [Number(process.env.HILUM_FUZZ_SEED)] : [20261130, 7];
const SEEDS_IN_DISH = 30;
const DISHES = [1, 2, 3];

test.use({ viewport: { width: 390, height: 800 } });

interface Entered {
  /** normal seeds found today, dish by dish; null: not counted */
  found: (number | null)[];
  /** what can be taken back: a dish, and what stood there before */
  steps: { dish: number; before: number | null }[];
  open: number;
}

const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, exact: typeof name === 'string' });
const openDish = (page: Page, dish: number) =>
  page
    .getByRole('navigation', { name: 'Dishes' })
    .getByRole('button', { name: new RegExp(`^Dish ${dish}:`) })
    .click();

for (const [round, seed] of SEEDS.entries()) {
  test(`the server holds what was entered, in any sequence (${seed})`, async ({ page, bankDirectory }) => {
    test.setTimeout(240_000);
    const number = `T-${6001 + round}`;
    insertTrays(bankDirectory, [
      { number, dishes: DISHES.map(() => SEEDS_IN_DISH), countEveryDays: 2, place: `At random ${round}` },
    ]);
    const random = xoroshiro128plus(seed);
    const upTo = (most: number) => ((random.next() >>> 0) % most) + 1;
    const entered: Entered = { found: DISHES.map(() => null), steps: [], open: 1 };
    let offline = false;

    const now = () => entered.found[entered.open - 1] ?? null;
    const write = (value: number | null) => {
      entered.steps.push({ dish: entered.open, before: now() });
      entered.found[entered.open - 1] = value;
    };
    const acts: Record<string, () => Promise<void>> = {
      async plus() {
        await button(page, 'One normal more').click();
        if ((now() ?? 0) < SEEDS_IN_DISH) write((now() ?? 0) + 1);
      },
      async minus() {
        await button(page, 'One normal less').click();
        if ((now() ?? 0) > 0) write((now() ?? 0) - 1);
      },
      async number() {
        // Opening the dish anew begins a new number; all its digits are taken back together.
        await openDish(page, entered.open);
        const typed = upTo(SEEDS_IN_DISH);
        for (const digit of String(typed)) await button(page, digit).click();
        if (now() !== typed || Number(String(typed)[0]) !== typed) write(typed);
      },
      async dish() {
        entered.open = upTo(DISHES.length);
        await openDish(page, entered.open);
      },
      async undo() {
        const undo = button(page, 'Undo');
        if (await undo.isDisabled()) {
          expect(entered.steps).toEqual([]);
          return;
        }
        await undo.click();
        const step = entered.steps.pop();
        if (!step) return;
        entered.found[step.dish - 1] = step.before;
        // The screen goes to the dish in which something was taken back.
        entered.open = step.dish;
      },
      async reload() {
        await page.reload();
        await expect(page.getByRole('heading', { level: 1 })).toContainText(number);
        entered.steps = [];
        entered.open = 1;
        await openDish(page, 1);
      },
      async connection() {
        offline = !offline;
        await page.context().setOffline(offline);
      },
    };
    const names = ['plus', 'plus', 'plus', 'minus', 'number', 'number', 'dish', 'dish', 'undo', 'reload', 'connection'];

    await page.goto('/bench');
    await expect(page.getByText(number)).toBeVisible();
    await expect
      .poll(() => page.evaluate(async () => Boolean(await (await caches.open('hilum-bench-page')).match('/bench'))))
      .toBe(true);
    await page.goto(`/bench#${number}`);
    await openDish(page, 1);
    const done: string[] = [];
    for (let step = 0; step < STEPS; step += 1) {
      const name = names[upTo(names.length) - 1] as string;
      done.push(name);
      await acts[name]?.();
      await openDish(page, entered.open);
      const shown = page.getByRole('spinbutton', { name: new RegExp(`^normal .*, dish ${entered.open}$`) });
      await expect(shown, done.slice(-8).join(', ')).toHaveAttribute('aria-valuenow', String(now() ?? 0));
    }
    await page.context().setOffline(false);
    await page.goto('/bench');
    await expect(page.locator('[data-link]')).toHaveText('Everything is sent.', { timeout: 30_000 });
    const expected = entered.found.flatMap((found, index) =>
      found === null ? [] : [`${TEST_TODAY} ${DISHES[index]}: ${found}/0/0/0/0`],
    );
    expect(countsHeld(bankDirectory, number)).toEqual(expected);
  });
}
