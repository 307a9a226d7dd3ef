import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';

/** What every page is looked at in: phone and laptop, light and dark. */
export const MODES = [
  { width: 390, height: 844, colorScheme: 'light' },
  { width: 390, height: 844, colorScheme: 'dark' },
  { width: 1280, height: 800, colorScheme: 'light' },
  { width: 1280, height: 800, colorScheme: 'dark' },
] as const;
export type Mode = (typeof MODES)[number];

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

export async function lookIn(page: Page, mode: Mode): Promise<void> {
  await page.setViewportSize(mode);
  await page.emulateMedia({ colorScheme: mode.colorScheme });
}

/** With everything unfolded: nothing is wider than the screen, and axe finds no violation. */
export async function expectReadable(page: Page, said: string): Promise<void> {
  await page.locator('main details').evaluateAll((all) => {
    for (const one of all) (one as HTMLDetailsElement).open = true;
  });
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(overflow, `${said} is wider than the screen`).toBeLessThanOrEqual(0);
  const { violations } = await new AxeBuilder({ page }).withTags(TAGS).analyze();
  const told = violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(' ')).join(', ')}`);
  expect.soft(told, said).toEqual([]);
}
