import path from 'node:path';
import { expect, test } from './support/bank';

const example = (name: string) => path.resolve('docs/examples', name);

test.describe.configure({ mode: 'serial' });

test('from an old spreadsheet and a new cleaned lot to a recorded decision', async ({ page }) => {
  await test.step('import three accessions and twelve lots', async () => {
    await page.goto('/import');
    await page.getByLabel('What the file holds').selectOption('accessions');
    await page.getByLabel('The file', { exact: true }).setInputFiles(example('accessions.csv'));
    await page.getByRole('button', { name: 'Read the file' }).click();
    await expect(page.getByText('Every row can be imported: 3 accessions.')).toBeVisible();
    await expect(page.getByText('Crops that the collection does not know: Skirret')).toBeVisible();
    await page.getByRole('button', { name: 'Import 3 accessions' }).click();
    await expect(page.getByText('Imported: all 3 rows are in the collection.')).toBeVisible();

    await page.goto('/import');
    await page.getByLabel('What the file holds').selectOption('lots');
    await page.getByLabel('The file', { exact: true }).setInputFiles(example('lots.csv'));
    await page.getByRole('button', { name: 'Read the file' }).click();
    await expect(page.getByText('Stores that it does not know: Chapel tin trunk')).toBeVisible();
    await page.getByRole('button', { name: 'Import 12 lots' }).click();
    await expect(page.getByText('Imported: all 12 rows are in the collection.')).toBeVisible();
    await page.goto('/collection/accessions/TG-02');
    await expect(page.getByRole('link', { name: 'TG-02-14' })).toBeVisible();
  });

  await test.step('log a new cleaned lot', async () => {
    await page.goto('/collection/accessions/new');
    await page.getByLabel('Number').fill('TG-04');
    await page.getByLabel('Name').fill('Slipway Leek');
    await page.getByLabel('Crop').selectOption({ label: 'Leek' });
    await page.getByRole('button', { name: 'Add the accession' }).click();
    await expect(page.getByRole('heading', { level: 1 })).toContainText('Slipway Leek');
    await page.goto('/');
    await page.getByRole('link', { name: 'Log a cleaned lot' }).click();
    await page.getByLabel('Accession').fill('TG-04');
    await page.getByLabel('Lot number').fill('TG-04-26');
    await page.getByLabel('Harvested on').fill('2026-09-12');
    await page.getByLabel('Isolation').selectOption({ label: 'cage' });
    await page.getByLabel('Plants harvested').fill('38');
    await page.getByLabel('Seeds counted').fill('350');
    await page.getByLabel('Moisture').fill('7,2');
    await page.getByLabel('Container').selectOption('glass-jar');
    await page.getByLabel('Store', { exact: true }).selectOption({ label: 'Chest freezer, −18 °C' });
    await page.getByLabel('Stored on').fill('2026-10-20');
    await page.getByRole('button', { name: 'Store the lot' }).click();
    await expect(page.getByRole('heading', { level: 1 })).toContainText('TG-04-26');
    await expect(page.getByText('Nobody has tested this lot.')).toBeVisible();
  });

  await test.step('record a test on it', async () => {
    await page.getByRole('link', { name: 'Record a test' }).click();
    await page.getByLabel('Set on').fill('2026-10-25');
    await page.getByLabel('Last count on').fill('2026-11-10');
    const counts = [46, 45, 47, 44];
    for (const [index, normal] of counts.entries()) {
      const dish = page.getByRole('group', { name: `Replicate ${index + 1}` });
      await dish.getByLabel('normal', { exact: true }).fill(String(normal));
      await dish.getByLabel('abnormal', { exact: true }).fill('2');
    }
    await page.getByRole('button', { name: 'Save the test' }).click();
    await expect(page.getByText(/91 in 100 seeds germinated/)).toBeVisible();
    await expect(page.getByText(/The four replicates agree/)).toBeVisible();
  });

  await test.step('read its forecast', async () => {
    await page.goto('/collection/lots/TG-04-26');
    await expect(page.getByText(/Most likely \d\d in 100 seeds are alive today/)).toBeVisible();
    await expect(page.getByRole('img', { name: /Viability of lot TG-04-26 from 2026/ })).toBeVisible();
    await page.getByText('The same figures in a table', { exact: true }).click();
    await expect(page.getByRole('cell', { name: '182 of 200' })).toBeVisible();
    // 350 seeds less the 200 of the test
    await expect(page.getByRole('definition').filter({ hasText: /^150$/ })).toBeVisible();
  });

  await test.step('ask what a warmer place would cost it', async () => {
    await page.getByText('What if it lay elsewhere?').click();
    await page.getByLabel('or temperature, °C').fill('20');
    await page.getByRole('button', { name: 'Draw it' }).click();
    await expect(page.getByRole('status')).toContainText(/From today in 20 °C, 7.2 % moisture: .*years/);
  });

  await test.step('see it in the regrow list with the right reason', async () => {
    await page.goto('/regrow');
    await page.getByLabel('Find').fill('TG-04');
    await page.getByRole('button', { name: 'Show' }).click();
    const row = page.getByRole('row', { name: /Slipway Leek/ });
    await expect(row).toContainText('TG-04-26');
    await expect(row).toContainText('Regrow 2027');
    await expect(row).toContainText(
      'Seed is running out: enough for one regrowing, not for two; only lot of its accession.',
    );
  });

  await test.step('record the decision', async () => {
    await page.getByRole('link', { name: 'Decide for Slipway Leek' }).click();
    await page.getByLabel('What to do').selectOption({ label: 'Regrow' });
    await page.getByLabel('Season').selectOption('2028');
    await page.getByRole('button', { name: 'Record the decision' }).click();
    await expect(page.getByText('Fill this in.')).toBeVisible();
    await expect(page.getByLabel('Season')).toHaveValue('2028');
    await page.getByLabel('Why').fill('Enough for one sowing only; the long bed is free in 2028.');
    await page.getByRole('button', { name: 'Record the decision' }).click();
    await expect(page.getByText('Recorded. It stays visible here and in the list.')).toBeVisible();
    await expect(page.getByText('Enough for one sowing only')).toBeVisible();
    await page.goto('/regrow?q=TG-04');
    await expect(page.getByRole('link', { name: 'Decided: regrow in 2028' })).toBeVisible();
    await page.goto('/collection/accessions/TG-04');
    await expect(page.getByText(/Decided for TG-04 Slipway Leek, season 2028: regrow/)).toBeVisible();
  });
});
