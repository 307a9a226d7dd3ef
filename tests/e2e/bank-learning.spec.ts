import { expect, test } from './support/bank';

test("a crop's own tests: read, taken over, undone", async ({ page }) => {
  await page.goto('/collection/crops?q=kale');
  await page.getByRole('link', { name: 'Kale', exact: true }).click();
  const learnt = page.getByRole('region', { name: "What this bank's own tests say" });
  await expect(learnt).toContainText(/\d+ tests of \d+ lots of kale: a fresh lot is typically \d+\s% alive/);
  await expect(learnt.getByRole('row', { name: /times as fast as published/ })).toBeVisible();

  await test.step('take them over: the page says so, and the history names the lots', async () => {
    await learnt.getByRole('button', { name: 'Use these for this crop' }).click();
    await expect(learnt).toContainText('These figures are in use since');
    await expect(learnt.getByRole('button', { name: /for this crop/ })).toHaveCount(0);
    await expect(page.getByText(/Took over for crop Kale what \d+ lots and \d+ tests say/)).toBeAttached();
    await expect(page.getByRole('region', { name: "The bank's own figures" })).toContainText(
      'Initial viability expected',
    );
  });

  await test.step("undo it by emptying the crop's own figures", async () => {
    await learnt.getByRole('link', { name: "empty them among the bank's own figures" }).click();
    await page.getByText('What to expect of a lot before any test').click();
    for (const name of [
      'Initial viability, middle',
      'Initial viability, spread',
      'Rate of ageing, middle',
      'Rate of ageing, spread',
    ]) {
      await page.getByLabel(name).fill('');
    }
    await page.getByRole('button', { name: 'Save' }).click();
    await expect(learnt.getByRole('button', { name: 'Use these for this crop' })).toBeVisible();
    await expect(learnt).not.toContainText('in use since');
  });
});
