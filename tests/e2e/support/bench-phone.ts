import { expect, type Page } from '@playwright/test';

/** One visit with a connection: the tray is there, and the worker has kept the page with all its files. */
export async function openBenchOnce(page: Page, trayNumber: string): Promise<void> {
  await page.goto('/bench');
  await expect(page.getByText(trayNumber)).toBeVisible();
  await expect
    .poll(
      () => page.evaluate(async () => (await (await caches.open('hilum-bench-page')).match('/bench')) !== undefined),
      { timeout: 30_000, message: 'the page is kept' },
    )
    .toBe(true);
}

/** How it stands with the server, in the strip above everything. */
export const benchLink = (page: Page) => page.locator('[data-link]');

/** Opens a dish of the open tray, and types what was found in it. */
export async function countDish(page: Page, dish: number, found: number): Promise<void> {
  await page
    .getByRole('navigation', { name: 'Dishes' })
    .getByRole('button', { name: new RegExp(`^Dish ${dish}:`) })
    .click();
  for (const digit of String(found)) await page.getByRole('button', { name: digit, exact: true }).click();
  await expect(page.getByRole('spinbutton', { name: new RegExp(`^normal .*, dish ${dish}$`) })).toHaveAttribute(
    'aria-valuenow',
    String(found),
  );
}
