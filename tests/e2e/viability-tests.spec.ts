import { expect, test } from './support/bank';
import { expectReadable, lookIn, MODES } from './support/readable';

test.describe.configure({ mode: 'serial' });
test.use({ ownBank: 'viability-tests' });

/** Kale with one packet in the fridge. */
const LOT = 'L-2025-001';
const PACKET = 'P-00122';

test('seed is stained, its ledger kept in the same step, and the cautions stand before the work', async ({ page }) => {
  await page.goto(`/collection/lots/${LOT}`);
  await page.getByRole('link', { name: 'Record a tetrazolium or cut test' }).click();
  await expect(page.getByText('never pipette by mouth')).toBeVisible();
  await expect(page.getByText('never sow, eat or feed it')).toBeVisible();
  await page.getByLabel('Stained in part, or wrongly').fill('3');
  await page.getByRole('button', { name: 'Save the test' }).click();
  await expect(page.getByText('Write how many stained as they should, 0 if none did.')).toBeVisible();
  await expect(page.getByLabel('Stained in part, or wrongly')).toHaveValue('3');
  await page.getByLabel('Stained as it should be').fill('45');
  await page.getByLabel('Unstained').fill('2');
  await page.getByRole('button', { name: 'Save the test' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('V-0001');
  await expect(page.getByText('between 78 and 96 % of the lot is likely alive')).toBeVisible();
  await expect(page.getByText('The forecast is not changed by it')).toBeVisible();
  await expect(page.getByText('50 taken out of the ledger on 25 Nov 2026.')).toBeVisible();
  await page.goto(`/stores/packets/${PACKET}`);
  await expect(page.getByText('Tetrazolium test V-0001')).toBeVisible();
});

test('a correction takes its place and says why', async ({ page }) => {
  await page.goto('/germination/viability/V-0001');
  await page.getByRole('link', { name: 'Correct this test' }).click();
  await page.getByLabel('Unstained').fill('4');
  await page.getByRole('button', { name: 'Save the correction' }).click();
  await expect(page.getByText('Say what was wrong with the test as first written.')).toBeVisible();
  await page.getByLabel('What was wrong with V-0001?').fill('two were overlooked');
  await page.getByRole('button', { name: 'Save the correction' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('V-0002');
  await expect(page.getByText('This is a correction; it speaks for the lot.')).toBeVisible();
});

test('the report tells tests and seeds of a time, and is saved as CSV', async ({ page, baseURL }) => {
  await page.goto('/germination');
  await page.getByRole('link', { name: 'Report of germination tests' }).click();
  await expect(page.getByText('14 tests of 14 lots')).toBeVisible();
  await expect(page.getByText('Tests and ledger agree')).toBeVisible();
  const file = await page.request.get(`${baseURL}/api/germination-report?from=2026-01-01&to=2026-12-31`);
  expect(file.headers()['content-type']).toContain('text/csv');
  expect((await file.text()).trimEnd().split('\r\n')).toHaveLength(15);
});

test('every page is readable on phone and laptop, light and dark', async ({ page }) => {
  // Twenty-four looks at a page.
  test.setTimeout(180_000);
  for (const mode of MODES) {
    await lookIn(page, mode);
    for (const path of [
      `/germination/viability/new?lot=${LOT}`,
      `/germination/viability/new?lot=${LOT}&kind=cut`,
      '/germination/viability/V-0002',
      '/germination/viability/V-0002/correct',
      '/germination/viability',
      '/germination/report',
    ]) {
      await page.goto(path);
      await expectReadable(page, `${path} ${mode.width} ${mode.colorScheme}`);
    }
  }
});
