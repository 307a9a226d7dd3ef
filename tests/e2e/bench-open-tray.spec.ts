import { expect, test } from './support/bank';
import { insertTrays } from './support/insert-trays';

const TRAY = 'T-9801';

test.use({ viewport: { width: 390, height: 800 } });

test.beforeAll(({ bankDirectory }) => {
  insertTrays(bankDirectory, [{ number: TRAY, place: 'Opened 1' }]);
});

test('an address with a tray that comes while the page is still starting opens the tray', async ({ page }) => {
  // The framework reads the address when it begins, and looks at the history once more before it writes it back.
  await page.addInitScript((number) => {
    const state = Object.getOwnPropertyDescriptor(History.prototype, 'state');
    Object.defineProperty(History.prototype, 'state', {
      configurable: true,
      get() {
        Object.defineProperty(History.prototype, 'state', state as PropertyDescriptor);
        if (location.pathname === '/bench') location.hash = number;
        return history.state;
      },
    });
  }, TRAY);
  await page.goto('/bench');
  await expect(page.getByRole('heading', { level: 1 })).toContainText(TRAY);
  expect(new URL(page.url()).hash).toBe(`#${TRAY}`);
});
