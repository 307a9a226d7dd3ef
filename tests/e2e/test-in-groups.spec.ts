import type { Page } from '@playwright/test';
import { expect, test } from './support/bank';
import { expectReadable, lookIn, MODES } from './support/readable';

/*
 * A test in groups of 40, from its plan to its decision. Both groups are written down from paper, so that no day has to
 * pass between them.
 */
test.use({ ownBank: 'groups' });

const LOT = 'L-2019-007';
const FIRST_SET_ON = '2026-10-28';
const FIRST_ENDED_ON = '2026-11-11';
const SECOND_ENDED_ON = '2026-11-25';

const series = (page: Page) => page.getByRole('region', { name: 'A test in groups' });

/** What the ledger holds of the lot. */
async function seedsLeft(page: Page): Promise<number> {
  await page.goto(`/collection/lots/${LOT}/ledger`);
  const said = await page.getByText('In all its packets:').textContent();
  return Number((/: (?:about )?([\d\s]+)/.exec(said ?? '')?.[1] ?? '').replace(/\D/g, ''));
}

/** Writes down the only count of a tray of two dishes: so many alive, the rest dead. */
async function countFromPaper(page: Page, tray: string, on: string, alive: readonly number[]): Promise<void> {
  await page.goto(`/germination/${tray}/tray/count?on=${on}`);
  for (const [index, normal] of alive.entries()) {
    const dish = page.getByRole('group', { name: new RegExp(`^Dish ${index + 1}`) });
    await dish.getByLabel('normal', { exact: true }).fill(String(normal));
  }
  await page.getByLabel('What is left is dead').check();
  await page.getByRole('button', { name: 'Save the counts' }).click();
  await page.getByRole('button', { name: 'Close the test' }).click();
  await expect(page.getByRole('heading', { name: 'Replicates' })).toBeVisible();
}

test('a test in groups: planned, counted, not clear, the next group set and counted, decided', async ({ page }) => {
  test.setTimeout(240_000);
  let first = '';
  let second = '';
  let before = 0;
  let keepAtLeast = 0;
  let regrowAtMost = 0;

  await test.step('the first group is planned and set: 40 seeds leave the ledger', async () => {
    before = await seedsLeft(page);
    await page.goto(`/germination/plan/set?lots=${LOT}`);
    await page.getByLabel('Set on').fill(FIRST_SET_ON);
    await page.getByLabel('Where they stand').fill('incubator 2');
    await page.getByLabel('Seeds', { exact: true }).selectOption('groups');
    await page.getByRole('button', { name: /Set this test/ }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'The test is set' })).toBeVisible();
    await expect(page.getByRole('cell', { name: '40 in 2' })).toContainText('group 1');
    first = (await page.getByRole('rowheader').textContent()) ?? '';
    expect(await seedsLeft(page)).toBe(before - 40);
  });

  await test.step('while it is counted, its page says what will decide, and offers no group', async () => {
    await page.goto(`/germination/${first}`);
    await expect(series(page)).toContainText('Group 1 is being counted');
    const look = (await series(page).getByText('When 40 seeds are counted').textContent()) ?? '';
    keepAtLeast = Number(/(\d+) or more alive: stop, keep/.exec(look)?.[1]);
    regrowAtMost = Number(/(\d+) or fewer alive: stop, regrow/.exec(look)?.[1]);
    expect(keepAtLeast).toBeGreaterThan(regrowAtMost + 1);
    expect(keepAtLeast).toBeLessThanOrEqual(40);
    await expect(page.getByRole('button', { name: 'Set the next group' })).toHaveCount(0);
  });

  await test.step('closed between the limits, it is not clear: the next group is asked for, here, on Germination and on Today', async () => {
    const alive = keepAtLeast - 1;
    await countFromPaper(page, first, FIRST_ENDED_ON, [20, alive - 20]);
    await expect(series(page)).toContainText(
      `${alive} of 40 seeds were alive. That is not clear yet: set 40 more seeds.`,
    );
    for (const address of ['/germination', '/']) {
      await page.goto(address);
      const waiting = page
        .getByRole('listitem')
        .filter({ hasText: `${alive} of 40 alive: not clear yet, set 40 more` });
      await expect(waiting).toContainText(LOT);
      for (const mode of MODES) {
        await lookIn(page, mode);
        await expectReadable(page, `${address} with a group waiting, ${mode.width} px, ${mode.colorScheme}`);
      }
    }
    await page
      .getByRole('link', { name: new RegExp(LOT) })
      .filter({ hasText: 'set 40 more' })
      .click();
    await expect(page).toHaveURL(new RegExp(`/germination/${first}#series-title$`));
    for (const mode of MODES) {
      await lookIn(page, mode);
      await expectReadable(page, `a test in groups that is not clear, ${mode.width} px, ${mode.colorScheme}`);
    }
  });

  await test.step('a group before the first is refused beside its day, and the form keeps what was typed', async () => {
    await series(page).getByLabel('Set on').fill('2026-10-01');
    await series(page).getByLabel('Where it stands').fill('incubator 3');
    await series(page).getByRole('button', { name: 'Set the next group' }).click();
    await expect(
      series(page).getByText(/Group 1 was set on 2026-10-28: .* choose that day or a later one/),
    ).toBeVisible();
    await expect(series(page).getByLabel('Set on')).toBeFocused();
    await expect(series(page).getByLabel('Set on')).toHaveValue('2026-10-01');
    await expect(series(page).getByLabel('Where it stands')).toHaveValue('incubator 3');
    expect(await seedsLeft(page)).toBe(before - 40);
    await page.goBack();
  });

  await test.step('the next group is set: its seed leaves the ledger, labels come next', async () => {
    await series(page).getByLabel('Set on').fill(FIRST_ENDED_ON);
    await expect(series(page).getByLabel('Where it stands')).toHaveValue('incubator 2');
    await series(page).getByRole('button', { name: 'Set the next group' }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'The test is set' })).toBeVisible();
    await expect(page.getByRole('cell', { name: '40 in 2' })).toContainText('group 2');
    second = (await page.getByRole('rowheader').textContent()) ?? '';
    await expect(page.getByRole('link', { name: 'Print labels' })).toHaveAttribute('href', new RegExp(second));
    expect(await seedsLeft(page)).toBe(before - 80);
    await page.goto('/germination');
    // One of the demonstration collection goes on waiting.
    await expect(page.getByRole('region', { name: /^Next groups to set/ })).not.toContainText(LOT);
    await page.goto(`/germination/${first}`);
    await expect(series(page)).toContainText('Group 2 is being counted; the plan looks again when it is closed.');
    await expect(series(page).getByRole('button')).toHaveCount(0);
  });

  await test.step('both groups together decide, and the test takes no more seed', async () => {
    await countFromPaper(page, second, SECOND_ENDED_ON, [20, 20]);
    await expect(series(page)).toContainText(`${keepAtLeast - 1 + 40} of 80 seeds were alive. Stop: the lot is above`);
    await expect(series(page).getByRole('rowheader')).toHaveText([`1 ${first}`, `2 ${second}`]);
    await expect(page.getByRole('button', { name: 'Set the next group' })).toHaveCount(0);
    await page.goto(`/germination/${first}`);
    await expect(series(page)).toContainText('Stop: the lot is above');
    expect(await seedsLeft(page)).toBe(before - 80);
  });
});
