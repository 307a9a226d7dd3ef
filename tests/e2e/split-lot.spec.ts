import { expect, test } from './support/bank';

test.describe.configure({ mode: 'serial' });

/** Barley in a jar in the pantry, and nothing of it anywhere else. */
const LOT = 'L-2020-009';
/** Written down late: the seed was dried and put into the freezer then. */
const SPLIT_ON = '2022-01-10';

test('a lot is split into base stock in the freezer and a safety duplicate at the partner bank', async ({ page }) => {
  await test.step('its page says that there is no safety duplicate', async () => {
    await page.goto(`/collection/lots/${LOT}`);
    const packets = page.getByRole('region', { name: /^Packet/ });
    await expect(packets.getByText('Active stock in Cool pantry.')).toBeVisible();
    await expect(packets.getByText(/No safety duplicate/)).toBeVisible();
    await packets.getByRole('link', { name: /^P-/ }).first().click();
    await page.waitForURL(/\/stores\/packets\/P-/);
    await expect(page.getByRole('heading', { level: 1 })).toContainText('Ramsgarth Six-row');
  });
  const jar = new URL(page.url()).pathname;
  const held = await seedsLeft();

  await test.step('dried seed into a foil pouch in the freezer, after a warning read', async () => {
    await page.getByRole('link', { name: 'Split', exact: true }).click();
    await page.getByLabel('For the new packet').fill('3000');
    await page.getByLabel('What the new packet is for').selectOption({ label: 'base stock' });
    await page.getByLabel('Store', { exact: true }).selectOption({ label: 'Chest freezer, −18 °C' });
    await page.getByLabel('From', { exact: true }).fill(SPLIT_ON);
    await page.getByLabel('Container', { exact: true }).selectOption('foil-pouch');
    await page.getByRole('button', { name: 'Split it off' }).click();
    // It was jarred at 9.6 %: too moist to seal for long.
    await expect(page.getByText(/too moist to seal/)).toBeVisible();
    await expect(page.getByLabel('For the new packet')).toHaveValue('3000');
    await page.getByLabel(/^Moisture/).fill('6,5');
    await page.getByLabel('Desiccant').selectOption('silica-gel');
    await page.getByRole('button', { name: 'Split it off' }).click();
    await expect(page.getByText('base stock', { exact: true })).toBeVisible();
    await expect(page.getByText('sealed since 10 Jan 2022')).toBeVisible();
    await expect(page.getByText('Its desiccant was to be changed by 9 Jul 2022.')).toBeVisible();
    expect(await seedsLeft()).toBe(3000);
    const stays = page.getByRole('table', { name: /Stays in store/ });
    await expect(stays.getByRole('row')).toHaveCount(3);
    await expect(stays).toContainText('Cool pantry');
    const ledger = page.getByRole('table', { name: /^Ledger of packet/ });
    await expect(ledger).toContainText('split');
    await expect(ledger).toContainText('+3 000');
  });

  await test.step('and a safety duplicate to the partner bank', async () => {
    await page.goto(jar);
    expect(await seedsLeft()).toBe(held - 3000);
    await page.getByRole('link', { name: 'Split', exact: true }).click();
    await page.getByLabel('For the new packet').fill('500');
    await page.getByLabel('Store', { exact: true }).selectOption({ label: "Partner bank's freezer, −20 °C" });
    await page.getByLabel('Container', { exact: true }).selectOption('foil-pouch');
    await page.getByLabel(/^Moisture/).fill('6,5');
    await page.getByRole('button', { name: 'Split it off' }).click();
    await expect(page.getByText('safety duplicate', { exact: true })).toBeVisible();
    await expect(page.getByText(/held elsewhere/)).toBeVisible();
  });

  await test.step("the lot's page says what is where, and what the freezer will save", async () => {
    await page.goto(`/collection/lots/${LOT}`);
    const packets = page.getByRole('region', { name: 'Packets' });
    await expect(packets).toContainText(
      "Active stock in Cool pantry; base stock in Chest freezer; safety duplicate in Partner bank's freezer (held elsewhere).",
    );
    await expect(packets.getByText(/No safety duplicate/)).toHaveCount(0);
    const [pantry, freezer, partner] = await Promise.all(
      [/active stock/, /base stock/, /safety duplicate/].map(async (role) =>
        tenYears((await packets.getByRole('row', { name: role }).textContent()) ?? ''),
      ),
    );
    expect(freezer).toBeGreaterThan((pantry as number) + 1);
    expect(partner).toBeGreaterThan((pantry as number) + 1);
  });

  await test.step('what lies at the partner bank is a safety duplicate until it comes back', async () => {
    await page
      .getByRole('row', { name: /safety duplicate/ })
      .getByRole('link', { name: /^P-/ })
      .click();
    await page.getByRole('link', { name: 'Change purpose' }).click();
    await page.getByLabel('From now on').selectOption('active');
    await page.getByRole('button', { name: 'Change it' }).click();
    await expect(page.getByText(/Move it back first/)).toBeVisible();
  });

  await test.step('poured together, the seed that aged more gives its history; the other may be kept by a tick', async () => {
    await page.goto(`/collection/lots/${LOT}`);
    await page
      .getByRole('row', { name: /base stock/ })
      .getByRole('link', { name: /^P-/ })
      .click();
    await page.getByRole('link', { name: 'Merge' }).click();
    await page.getByRole('button', { name: 'Merge them' }).click();
    await expect(page.getByText(/has aged more in store/)).toBeVisible();
    await page.getByLabel('Keep it anyway').check();
    await page.getByRole('button', { name: 'Merge them' }).click();
    await expect(page.getByRole('table', { name: /^Ledger of packet/ })).toContainText('merge');
    expect(await seedsLeft()).toBe(held - 500);
  });

  async function seedsLeft(): Promise<number> {
    const shown = await page
      .getByText('Seed left', { exact: true })
      .locator('xpath=following-sibling::dd')
      .textContent();
    const figure = /^(?:about )?([\d\u202f]+)/.exec(shown?.trim() ?? '')?.[1] ?? '';
    return Number(figure.replace(/\D/g, ''));
  }
});

/** 'in ten years here 79 %' */
const tenYears = (row: string): number => Number(/in ten years here (\d+)/.exec(row)?.[1]);
