import type { Page } from '@playwright/test';
import { expect, test } from './support/bank';

test.describe.configure({ mode: 'serial' });

const RECIPIENT = 'The harbour allotments';
const NOTE = `request R-0003 to ${RECIPIENT}`;

/** '9 460' with a thin space, as screens write it. */
const written = (count: number) => String(count).replace(/\B(?=(\d{3})+$)/g, '\u202f');

async function lookUp(page: Page, words: string, show = '') {
  await page.getByRole('searchbox', { name: 'Find by name, number or crop' }).fill(words);
  await page.getByRole('combobox', { name: 'Show' }).selectOption(show);
  await page.getByRole('button', { name: 'Show', exact: true }).click();
  await page.waitForURL(/[?&]q=/);
}

test('share three lots with a group: chosen, packed, sent, and seen in the ledger', async ({ page }) => {
  await test.step('write down who asks', async () => {
    await page.goto('/stores/sharing');
    await page.getByRole('link', { name: 'New request' }).click();
    await page.getByLabel('For whom').fill(RECIPIENT);
    await page.getByRole('button', { name: 'Next: choose lots' }).click();
    await expect(page.getByText('Choose the kind of recipient.')).toBeVisible();
    await expect(page.getByLabel('For whom')).toHaveValue(RECIPIENT);
    await page.getByLabel('Kind of recipient').selectOption('group');
    await page.getByLabel('What for').fill('Plots along the harbour wall');
    await page.getByRole('button', { name: 'Next: choose lots' }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'Choose lots' })).toBeVisible();
  });

  await test.step('choose three lots that have seed to spare', async () => {
    for (const [index, name] of ['Wind-cut', 'Candlemas', 'Sandwater Flat'].entries()) {
      await lookUp(page, name);
      await page.getByRole('row', { name }).first().getByRole('button', { name: 'Add' }).click();
      await expect(page.getByRole('status').filter({ hasText: `${name} L-` })).toContainText('with 50 seeds');
      await expect(page.getByRole('link', { name: `To the list (${index + 1})` })).toBeVisible();
    }
  });

  await test.step('an accession that may not be shared is refused, with the reason', async () => {
    await lookUp(page, "Keeper's Red", 'all');
    const row = page.getByRole('row', { name: "Keeper's Red" }).first();
    await expect(row).toContainText('may not be shared: the keeper of the light asked');
    await expect(row.getByRole('button')).toHaveCount(0);
    const lot = (await row.getByText(/^L-\d/).textContent()) as string;
    await page.getByLabel('Lot number').fill(lot);
    await page.getByRole('button', { name: 'Put on the list' }).click();
    await expect(page.getByText(/Keeper's Red \(A-\d+\) may not be shared: the keeper of the light/)).toBeVisible();
    await page.getByRole('link', { name: 'To the list (3)' }).click();
  });

  let before = 0;
  await test.step('say how many seeds', async () => {
    await expect(page.getByLabel('From packet')).toHaveCount(3);
    const packets = page.getByLabel('From packet').first();
    const chosen = await packets.locator('option:checked').textContent();
    before = Number(/: ([\d\u202f]+) seeds/.exec(chosen ?? '')?.[1]?.replace('\u202f', ''));
    expect(before).toBeGreaterThan(500);
    await page.getByLabel('Seeds', { exact: true }).first().fill('80');
    await page.getByRole('button', { name: 'Save the list' }).click();
    await expect(page.getByText('The list is saved.')).toBeVisible();
    await expect(page.getByLabel('Seeds', { exact: true }).first()).toHaveValue('80');
  });

  await test.step('pack by the list', async () => {
    await page.getByRole('link', { name: 'Pack list' }).click();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(`Pack list for ${RECIPIENT}`);
    const bag = page.getByRole('listitem').filter({ hasText: 'Wind-cut' });
    await expect(bag).toContainText(/80 = 0\.\d+ g/);
    await expect(bag).toContainText(/Germination\d+ % of \d+ seeds/);
    await expect(page.getByText(/Local seed law, variety protection and plant-health rules apply/)).toBeVisible();
    await page.goBack();
  });

  await test.step('label the bags', async () => {
    await page.getByRole('link', { name: 'Labels', exact: true }).last().click();
    const sheet = page.getByRole('img', { name: 'Preview of sheet 1 of 1: 3 labels' });
    await expect(sheet).toContainText('Wind-cut');
    await expect(sheet).toContainText(/80 seeds · 0\.\d+ g/);
    await expect(sheet).toContainText('request R-0003');
    await expect(sheet).not.toContainText('P-0');
    const pdf = await page.request.get('/api/labels?request=R-0003&format=roll-62x29');
    expect(pdf.headers()['content-type']).toBe('application/pdf');
    await page.goto('/stores/sharing/R-0003');
  });

  await test.step('send it in one step', async () => {
    await page.getByRole('link', { name: 'Send', exact: true }).click();
    await page.getByRole('button', { name: `Send it to ${RECIPIENT}` }).click();
    await expect(page.getByText('Choose the way in which the seed was measured.')).toBeVisible();
    await page.getByLabel('The seeds were').selectOption('counted');
    await page.getByRole('button', { name: `Send it to ${RECIPIENT}` }).click();
    await expect(page.getByText('Sent: 3 packets drawn from')).toBeVisible();
    await expect(page.getByRole('row').filter({ hasText: 'out on 25 Nov 2026' })).toHaveCount(3);
  });

  await test.step('the ledger has the line and the balance', async () => {
    const row = page.getByRole('row', { name: /Wind-cut/ });
    await row.getByRole('link', { name: /^P-/ }).click();
    const line = page.getByRole('row').filter({ hasText: NOTE });
    await expect(line).toContainText('80');
    await expect(line).toContainText(written(before - 80));
    await page.goto('/stores/sharing?state=sent');
    await expect(page.getByRole('row', { name: RECIPIENT })).toContainText('sent');
  });
});

test('a line that leaves too little is sent by a steward with a reason only', async ({ page }) => {
  await page.goto('/stores/sharing');
  await page.getByRole('link', { name: 'The school garden at Northbie' }).click();
  await page.getByRole('link', { name: 'Send', exact: true }).click();
  await expect(page.getByText(/No seed can be spared: of \d+ in the bank's own packets/)).toBeVisible();
  await page.getByLabel('The seeds were').selectOption('counted');
  await page.getByRole('button', { name: /^Send it to/ }).click();
  await expect(page.getByText('Write why it goes all the same, or change the list.')).toBeVisible();
  await expect(page.getByLabel('The seeds were')).toHaveValue('counted');
  await page.getByLabel('Send it all the same, because').fill('They grow it again for us.');
  await page.getByRole('button', { name: /^Send it to/ }).click();
  await expect(page.getByText('Sent: 3 packets drawn from')).toBeVisible();
  await expect(page.getByText(/^Sent request R-0002 .*: They grow it again for us\./)).toBeVisible();
});
