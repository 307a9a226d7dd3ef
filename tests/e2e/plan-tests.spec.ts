import type { Page } from '@playwright/test';
import { expect, test } from './support/bank';
import { expectReadable, lookIn, MODES } from './support/readable';

test.describe.configure({ mode: 'serial' });
test.use({ ownBank: 'plan-tests' });

/** '4 931' as screens write it, with a thin space. */
const number = (text: string | undefined) => Number((text ?? '').replace(/\D/g, ''));

const light = (page: Page) => page.getByRole('group', { name: '20 °C, in light' });
const card = (page: Page, lot: string) =>
  page
    .getByRole('region')
    .filter({ has: page.getByRole('heading', { level: 3, name: lot }) })
    .last();

const trayCount = async (page: Page) =>
  number((await page.getByRole('heading', { name: /^Under way/ }).textContent()) ?? undefined);

test('a group of lots is planned from what is due, set, and its seed is out of the ledger', async ({ page }) => {
  let underWay = 0;
  await test.step('what is due stands together by incubator', async () => {
    await page.goto('/germination');
    underWay = await trayCount(page);
    await page.getByRole('link', { name: 'Plan tests' }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'Plan tests' })).toBeVisible();
    await expect(light(page)).toContainText('Lettuce');
    await expect(page.getByText(/set 40 seeds at a time and stop as soon as the count is clear/).first()).toBeVisible();
  });

  let set = 0;
  await test.step('a whole group is ticked at once, and one lot of another', async () => {
    const cool = page.getByRole('group', { name: '20 °C', exact: true });
    await cool.getByRole('checkbox', { name: /^(These|All) / }).check();
    for (const box of await cool.getByRole('checkbox', { name: /, lot L-/ }).all()) await expect(box).toBeChecked();
    await light(page)
      .getByRole('checkbox', { name: /L-2026-002/ })
      .check();
    set = await page.getByRole('checkbox', { name: /, lot L-/, checked: true }).count();
    expect(set).toBeGreaterThan(2);
    await page.getByRole('button', { name: 'Go on with the ticked lots' }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'Set tests' })).toBeVisible();
    await expect(page.getByRole('heading', { level: 3 })).toHaveCount(set);
  });

  let packet = '';
  let before = 0;
  await test.step('each lot has its proposal, its packet and its method; a packet that holds too little is refused', async () => {
    const lot = card(page, 'L-2026-002');
    await expect(lot).toContainText('Its first test: every later forecast rests on it, so 100 seeds.');
    await expect(lot).toContainText('Fresh (dormant) seed is likely: it is young.');
    const chosen = (await lot.getByLabel('Seed from').locator('option:checked').textContent()) ?? '';
    packet = /P-\d+/.exec(chosen)?.[0] ?? '';
    before = number(/: (.*) seeds/.exec(chosen)?.[1]);
    expect(before).toBeGreaterThan(1000);
    await page.getByLabel('Where they stand').fill('incubator 1, shelf 2');
    await lot.getByText('Days, pre-chill, treatment, other numbers').click();
    await lot.getByLabel('Other number of dishes').fill('2');
    await lot.getByLabel('Seeds in each of them').fill('9000');
    await page.getByRole('button', { name: `Set these ${set} tests` }).click();
    await expect(lot.getByText(`Packet ${packet} holds ${before} seeds, and this takes 18000`)).toBeVisible();
    // The form keeps what was typed.
    await expect(page.getByLabel('Where they stand')).toHaveValue('incubator 1, shelf 2');
    await expect(lot.getByLabel('Seeds in each of them')).toHaveValue('9000');
    await lot.getByLabel('Other number of dishes').fill('');
    await lot.getByLabel('Seeds in each of them').fill('');
  });

  let tests: string[] = [];
  await test.step('they are set in one step, with numbers, labels and the bench one tap away', async () => {
    await page.getByRole('button', { name: `Set these ${set} tests` }).click();
    await expect(page.getByRole('heading', { level: 1, name: `${set} tests are set` })).toBeVisible();
    await expect(page.getByRole('status')).toContainText(/seeds are laid out, and the ledger has them as taken out/);
    tests = await page.getByRole('rowheader').allTextContents();
    expect(tests).toHaveLength(set);
    await expect(page.getByRole('link', { name: 'Print labels' })).toHaveAttribute(
      'href',
      `/germination/labels?trays=${tests.join('%2C')}`,
    );
    await expect(page.getByRole('link', { name: 'To the bench' })).toHaveAttribute('href', '/bench');
    await expect(page.getByRole('row', { name: tests[0] ?? '' })).toContainText('incubator 1, shelf 2');
  });

  await test.step('the ledger shows the withdrawal', async () => {
    const row = page.getByRole('row', { name: /L-2026-002/ });
    const test = (await row.getByRole('rowheader').textContent()) ?? '';
    await page.goto(`/stores/packets/${packet}`);
    const line = page.getByRole('row', { name: test });
    await expect(line).toContainText(/−100/);
  });

  await test.step('what is under way stands on Germination and is due no more', async () => {
    await page.goto('/germination');
    expect(await trayCount(page)).toBe(underWay + set);
    await page.goto('/germination/plan');
    await expect(light(page)).toHaveCount(0);
    await page.getByRole('searchbox').fill('L-2026-002');
    await page.getByRole('button', { name: 'Find' }).click();
    await expect(page.getByRole('group', { name: 'Other lots' })).toContainText(
      /Test T-\d+ under way since 25 Nov 2026/,
    );
    await expect(page.getByRole('group', { name: 'Other lots' })).toContainText(
      new RegExp(`${String(before - 100).replace(/\B(?=(\d{3})+$)/g, '.')} seeds left`),
    );
  });
});

test('a lot that is not due is found by its name, and lots ticked before stay ticked', async ({ page }) => {
  await page.goto('/germination/plan');
  const first = page.getByRole('checkbox', { name: /, lot L-/ }).first();
  await first.check();
  const lot = await first.getAttribute('value');
  await page.getByRole('searchbox').fill('Wind-cut 2025');
  await page.keyboard.press('Enter');
  const found = page.getByRole('group', { name: 'Other lots' });
  await expect(found.getByRole('checkbox')).toBeChecked();
  await expect(page.locator(`input[value="${lot}"]`)).toBeChecked();
  await page.getByRole('searchbox').fill('no such variety');
  await page.getByRole('button', { name: 'Find' }).click();
  await expect(page.getByText('There is no lot no such variety in the collection')).toBeVisible();
  await page.getByRole('button', { name: 'Go on with the ticked lots' }).click();
  await expect(page.getByRole('heading', { level: 3 })).toHaveCount(2);
});

for (const mode of MODES) {
  test(`planning and setting are readable at ${mode.width} px, ${mode.colorScheme}`, async ({ page }) => {
    await lookIn(page, mode);
    await page.goto('/germination/plan');
    await expectReadable(page, 'the plan');
    const lots = await page
      .getByRole('checkbox', { name: /, lot L-/ })
      .evaluateAll((all) => all.slice(0, 4).map((box) => (box as HTMLInputElement).value));
    await page.goto(`/germination/plan/set?lots=${lots.join(',')}`);
    await expect(page.getByRole('heading', { level: 3 })).toHaveCount(4);
    await expectReadable(page, 'setting tests');
    await page.goto('/germination');
    await expectReadable(page, 'Germination');
    const [test] = await page
      .getByRole('region', { name: /^Under way/ })
      .getByRole('link', { name: /^T-/ })
      .all();
    const tray = /T-\d+/.exec((await test?.textContent()) ?? '')?.[0] ?? '';
    await page.goto(`/germination/plan/done?trays=${tray}`);
    await expect(page.getByRole('heading', { level: 1, name: 'The test is set' })).toBeVisible();
    await expectReadable(page, 'tests that are set');
  });
}
