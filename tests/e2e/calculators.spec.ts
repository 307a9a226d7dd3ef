import { readFileSync } from 'node:fs';
import { expect, test } from './support/bank';

/** The calculators of Reference: asked by address, answered without script, unharmed by whatever an address holds. */

const SLUGS = [
  ...readFileSync('app/(bank)/reference/_parts/calculators.ts', 'utf8').matchAll(/slug: '([a-z-]+)'/g),
].map(([, slug]) => slug as string);

test('a question is asked by a form and kept in the address', async ({ page }) => {
  await page.goto('/reference');
  await page.getByRole('link', { name: 'Seeds to sow' }).click();
  await page.getByLabel('Plants wanted').fill('25');
  await page.getByLabel('Seeds that grew in its test').fill('80');
  await page.getByLabel('Seeds set in that test').fill('100');
  await page.getByLabel('Emergence').fill('100');
  await page.getByRole('button', { name: 'Work it out' }).click();
  await expect(page).toHaveURL(/plants=25/);
  const answer = page.getByRole('region', { name: 'Answer' });
  const said = (await answer.getByText(/^Sow/).textContent()) ?? '';
  // The fewest n with P(Bin(n, 0.8) >= 25) >= 0.95 is 36 (R: 25 + qnbinom(0.95, 25, 0.8)).
  await expect(answer.getByText(/exactly 80 %, 36 seeds/)).toBeVisible();
  await page.goto(page.url());
  await expect(answer.getByText(said)).toBeVisible();
  await page.getByText('Equation, source and limits').click();
  await expect(page.getByText('docs/methods/seeds-to-sow.md')).toBeVisible();
});

test('a wrong figure is named beside its field and everything typed stays', async ({ page }) => {
  await page.goto('/reference/germination-interval?germinated=60&seeds=50&level=95');
  const grew = page.getByLabel('Seeds that grew', { exact: true });
  await expect(grew).toHaveAttribute('aria-invalid', 'true');
  await expect(grew).toHaveAccessibleDescription(/More seeds grew than were set/);
  await expect(grew).toHaveValue('60');
  await expect(page.getByText(/of these seeds grew/)).toHaveCount(0);
});

test('several questions of one page do not disturb each other', async ({ page }) => {
  await page.goto('/reference/keeping-variety');
  await page.getByLabel('Seed from each plant').fill('3 3 3 3');
  await page
    .locator('form', { has: page.getByLabel('Seed from each plant') })
    .getByRole('button')
    .click();
  await expect(page.getByText('4.0 plants')).toBeVisible();
  await page.getByLabel('Parents at each regrowing').fill('1');
  await page
    .locator('form', { has: page.getByLabel('Parents at each regrowing') })
    .getByRole('button')
    .click();
  await expect(page.getByText('50.0 %')).toBeVisible();
  await expect(page.getByText('4.0 plants')).toBeVisible();
});

const HOSTILE = [
  '',
  'x',
  '-1',
  '0',
  '1e308',
  '0.0000001',
  '99999999999',
  '🌱',
  "'; DROP TABLE Lot; --",
  '<b>1</b>',
  'a'.repeat(2000),
];

for (const slug of SLUGS) {
  test(`whatever the address holds, ${slug} answers`, async ({ page }) => {
    test.slow();
    await page.goto(`/reference/${slug}`);
    const fields = await page
      .locator('main form')
      .evaluateAll((forms) =>
        (forms as HTMLFormElement[]).map((form) =>
          Object.fromEntries([...new FormData(form)].map(([name, value]) => [name, String(value)])),
        ),
      );
    expect(fields.length).toBeGreaterThan(0);
    for (const asked of fields) {
      for (const name of Object.keys(asked)) {
        for (const hostile of HOSTILE) {
          const address = `/reference/${slug}?${new URLSearchParams({ ...asked, [name]: hostile })}`;
          const response = await page.request.get(address);
          expect(response.status(), `${name} = ${hostile.slice(0, 30)}`).toBe(200);
          const shown = (await response.text()).replace(/<script[\s\S]*?<\/script>/g, '');
          expect(shown, address).not.toMatch(/>[^<]*\b(NaN|undefined|Infinity)\b[^<]*</);
        }
      }
    }
  });
}
