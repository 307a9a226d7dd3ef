import { expect, test } from './support/bank';

test.describe.configure({ mode: 'serial' });

/** Kale in a screw-cap tube in the fridge, packed at 5.2 %. */
const LOT = 'L-2025-001';
const PACKET = 'P-00122';
/** The demo has four moisture tests: ours are the next ones. */
const [OVEN, METER, CORRECTION] = ['M-0005', 'M-0006', 'M-0007'];

test('an oven test with two dishes that agree, beside the limits', async ({ page }) => {
  await page.goto(`/collection/lots/${LOT}`);
  await page.getByRole('link', { name: 'Record a moisture test' }).click();
  await expect(page.getByText('Never return it to the lot and never sow it')).toBeVisible();

  const dish = (index: number) => page.getByRole('group', { name: `Dish ${index}` });
  const fill = async (index: number, [empty, fresh, dry]: [string, string, string]) => {
    await dish(index).getByLabel('Dish and lid, empty').fill(empty);
    await dish(index).getByLabel('With fresh seed').fill(fresh);
    await dish(index).getByLabel('With dried seed').fill(dry);
  };
  await fill(1, ['20,114', '25,236', '24,985']);
  await page.getByRole('button', { name: 'Save the test' }).click();
  await expect(page.getByText('Two dishes at the least')).toBeVisible();
  await expect(dish(1).getByLabel('With dried seed')).toHaveValue('24,985');

  await fill(2, ['19.874', '25.051', '24.794']);
  await page.getByRole('button', { name: 'Save the test' }).click();
  await expect(page.getByRole('status')).toContainText(`${OVEN}: 4.9 %.`);
  await expect(page.getByRole('status')).toContainText('Two dishes, 0.06 points apart of 0.2 permitted: they agree.');
  await expect(
    page.getByRole('img', { name: /Moisture through time: 1 test and \d sealed stays?/ }).first(),
  ).toBeAttached();
  // The ledger is kept in the same step: what went into the dishes is gone.
  await expect(page.getByText(/Seed from P-00122, .* seeds used up/)).toBeVisible();
  await page.getByText('The dishes').click();
  await expect(page.getByRole('row', { name: /Dish 2 19.874 25.051 24.794 4.96/ })).toBeVisible();
});

test('a meter that contradicts what it was packed at puts the seal in doubt', async ({ page }) => {
  await page.goto(`/collection/lots/${LOT}/moisture/new?way=meter`);
  await page.getByLabel('The meter shows').fill('7,9');
  await page.getByRole('button', { name: 'Save the test' }).click();
  await page.goto(`/collection/lots/${LOT}`);
  await expect(
    page.getByText(/was packed at 5.2 % on .*, and measured 7.9 % on 25 Nov 2026: the seal may leak/),
  ).toBeVisible();
  await page.getByRole('link', { name: 'Reckon with 7.9 % from that day' }).click();
  await expect(page.getByRole('textbox', { name: 'Moisture' })).toHaveValue('7.9');
});

test('a correction takes the place of the test it names', async ({ page }) => {
  await page.goto(`/collection/lots/${LOT}/moisture`);
  await page.getByRole('link', { name: `Correct ${METER}` }).click();
  await page.getByLabel('The meter shows').fill('5.2');
  await page.getByRole('button', { name: 'Save the correction' }).click();
  await expect(page.getByText('Say what was wrong')).toBeVisible();
  await page.getByLabel(`What was wrong with ${METER}?`).fill('Read the line of another crop');
  await page.getByRole('button', { name: 'Save the correction' }).click();
  await expect(page.getByRole('status')).toContainText(`${CORRECTION}: 5.2 %.`);
  await expect(page.getByText('the seal may leak')).toHaveCount(0);
  await expect(page.getByText(`Corrected by ${CORRECTION}`)).toBeVisible();
});

test('a drying run with three weighings says how long is to go, and then to stop', async ({ page }) => {
  await page.goto('/stores/drying');
  await expect(page.getByRole('table', { name: /Runs that have ended/ })).toContainText('Hill Field');
  await page.getByRole('link', { name: 'Start drying' }).click();
  await page.getByLabel('Lot').fill(LOT);
  await page.getByRole('button', { name: 'Next', exact: true }).click();
  await expect(page.getByText(/Usual for kale: \d\.\d %, at rest in air of 15 % at 15 °C/)).toBeVisible();
  const whichSeed = page.getByLabel('Which seed');
  await whichSeed.selectOption(await whichSeed.locator('option', { hasText: PACKET }).getAttribute('value'));
  await page.getByLabel('From a test').selectOption({ label: 'none: typed below' });
  await page.getByLabel('Or typed').fill('12');
  await page.getByLabel('Dry it to').fill('7');
  await page.getByLabel('Empty tray').fill('100');
  await page.getByLabel('Tray with seed, now').fill('622.7');
  await page.getByLabel('Dried with').fill('silica gel');
  await page.getByLabel('Weighed at').fill('2026-11-23T09:00');
  await page.getByRole('button', { name: 'Start drying' }).click();
  await expect(page.getByText('Weigh it again: three weighings at the least')).toBeVisible();

  const weigh = async (weight: string, at: string) => {
    const time = page.getByLabel('Weighed at');
    if (!(await time.isVisible())) await page.getByText('Weighed earlier?').click();
    await time.fill(at);
    await page.getByLabel('The balance shows').fill(weight);
    await page.getByRole('button', { name: 'Save the weight' }).click();
    await expect(page.getByRole('row', { name: `${Number(weight).toFixed(1)} g` })).toBeVisible();
  };
  await weigh('613', '2026-11-23T17:00');
  await weigh('603', '2026-11-24T09:00');
  await weigh('598.5', '2026-11-24T21:00');
  await expect(page.getByText(/About .* to go|It should be at 7.0 % by now/).first()).toBeVisible();
  await expect(
    page.getByRole('img', { name: /4 weighings, the fitted curve and the weight to stop at, 594.6 g/ }).first(),
  ).toBeAttached();

  await page.getByLabel('The balance shows').fill('539');
  await page.getByRole('button', { name: 'Save the weight' }).click();
  await expect(page.getByText('less than the dry matter of this seed')).toBeVisible();
  await page.getByLabel('The balance shows').fill('594.2');
  await page.getByRole('button', { name: 'Save the weight' }).click();
  await expect(page.getByText(/Stop: at target since this (morning|afternoon|evening)/)).toBeVisible();

  await page.getByRole('button', { name: 'End the run' }).click();
  await expect(page.getByRole('status')).toContainText('Ended at 6.9 %');
  await page.getByRole('link', { name: `Pack ${PACKET} at 6.9 %` }).click();
  await expect(page.getByRole('textbox', { name: 'Moisture' })).toHaveValue('6.9');
});

test('sealing moist seed is warned of, and done when somebody means it', async ({ page }) => {
  await page.goto(`/stores/packets/${PACKET}/repack`);
  await page.getByLabel('Container', { exact: true }).selectOption('glass-jar');
  await page.getByRole('textbox', { name: 'Moisture' }).fill('11');
  await page.getByRole('button', { name: 'Repack it' }).click();
  await expect(page.getByText(/11 % is too moist to seal for long .*By the equation it falls to 85 %/)).toBeVisible();
  await page.getByRole('checkbox', { name: /anyway/ }).check();
  await page.getByRole('button', { name: 'Repack it' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText(PACKET);
});
