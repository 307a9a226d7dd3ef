import path from 'node:path';
import { expect, test } from './support/bank';

/** A storage experiment from its plan over a pasted table with slips to constants of the bank's own, and away again. */

const EXAMPLE = path.resolve('docs/examples/storage-experiment.csv');
const NAME = 'Leek at the bench';

test.describe.configure({ mode: 'serial' });

test('says on which days to count', async ({ page }) => {
  await page.goto('/reference');
  await page.getByRole('link', { name: 'Storage experiments' }).click();
  await page.getByLabel('Temperature', { exact: true }).fill('45');
  await page.getByLabel('Counts after that').fill('4');
  await page.getByRole('button', { name: 'Work it out' }).click();
  await expect(page).toHaveURL(/temperature=45/);
  await expect(
    page.getByRole('region', { name: 'Days to count' }).getByText(/Count before storage and on day .* 250 seeds/),
  ).toBeVisible();
});

test('names every slip of a pasted table and keeps it; a file comes in whole', async ({ page }) => {
  await page.goto('/reference/storage-experiments');
  await page.getByRole('link', { name: 'Add an experiment' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Add a storage experiment');
  const table = page.getByLabel('Counts', { exact: true });
  await table.fill('Lot,Moisture,Temperature,Days,Sown,Germinated\nA,8,20,10,50,51\nA,8,20,soon,50,40');
  await page.getByRole('button', { name: 'Check only' }).click();
  await expect(table).toHaveAccessibleDescription(/Line 2, Germinated: 51 germinated of 50 sown.*Line 3, Days/);
  await expect(table).toHaveValue(/soon/);
  await page.getByLabel('Or choose a file').setInputFiles(EXAMPLE);
  await page.getByRole('button', { name: 'Check only' }).click();
  await expect(page.getByText('All 32 counts can be read: 1 lot, 9 conditions.')).toBeVisible();
  await page.getByLabel('Name').fill(NAME);
  await page.getByLabel('Crop').selectOption({ label: 'Leek' });
  await page.getByRole('button', { name: 'Save and fit' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(NAME);
  await expect(page.getByText(/At 20 °C and 8 % moisture one probit is lost in/)).toBeVisible();
});

test('is asked by its address and unharmed by what that holds', async ({ page }) => {
  await page.goto('/reference/storage-experiments');
  await page.getByRole('link', { name: NAME }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(NAME);
  const address = new URL(page.url()).pathname;
  await page.getByLabel('Temperature coefficients').selectOption('fitted');
  await page.getByLabel('Moisture to speak of').fill('6,5');
  await page.getByRole('button', { name: 'Fit again' }).click();
  await expect(page.getByText(/At 20 °C and 6.5 % moisture/)).toBeVisible();
  await expect(page.getByLabel('Temperature coefficients')).toHaveValue('fitted');
  for (const hostile of ['', 'x', '-1', '0', '1e308', '1e-300', '🌱', '<b>1</b>', 'a'.repeat(2000)]) {
    for (const field of ['coefficients', 'moisture', 'temperature']) {
      const response = await page.request.get(`${address}?${new URLSearchParams({ [field]: hostile })}`);
      expect(response.status(), `${field} = ${hostile.slice(0, 30)}`).toBe(200);
      const shown = (await response.text()).replace(/<script[\s\S]*?<\/script>/g, '');
      expect(shown).not.toMatch(/>[^<]*\b(NaN|undefined|Infinity)\b[^<]*</);
    }
  }
});

test('saves its constants as the bank’s own, and goes when told so', async ({ page }) => {
  await page.goto('/reference/storage-experiments');
  await page.getByRole('link', { name: NAME }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(NAME);
  await page.getByLabel('Name').fill('Leek, by ourselves');
  await page.getByRole('button', { name: 'Save as the bank’s own' }).click();
  await expect(page).toHaveURL(/\/reference#/);
  const row = page.getByRole('row', { name: /Leek, by ourselves/ });
  await expect(row).toContainText("bank's own");
  await expect(row).toContainText(`Storage experiment “${NAME}” of this bank`);
  await page.goto('/reference/storage-experiments');
  await page.getByRole('link', { name: NAME }).click();
  await page.getByRole('link', { name: 'Change or remove' }).click();
  await page.getByRole('button', { name: 'Remove', exact: true }).click();
  await expect(page.getByText('Tick this to remove the experiment.')).toBeVisible();
  await page.getByLabel('Remove this experiment').check();
  await page.getByRole('button', { name: 'Remove', exact: true }).click();
  await expect(page).toHaveURL(/storage-experiments$/);
  await expect(page.getByRole('link', { name: NAME })).toHaveCount(0);
});
