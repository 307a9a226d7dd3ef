import path from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import Database from 'better-sqlite3';
import { expect, test } from './support/bank';
import { BANKS } from './support/prepare-banks';
import { PAGES } from './support/who-may';

/**
 * Every page of the demo bank, at phone and laptop width, in light and dark: no accessibility violation that axe can find,
 * nothing wider than the screen, no error in the console (the fixture sees to that).
 */
const MODES = [
  { width: 390, height: 844, colorScheme: 'light' },
  { width: 390, height: 844, colorScheme: 'dark' },
  { width: 1280, height: 800, colorScheme: 'light' },
  { width: 1280, height: 800, colorScheme: 'dark' },
] as const;
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
/** Pages that only exist with accounts, or that answer 404 in a bank on loopback; doors.spec.ts goes to them. */
const NOT_ON_LOOPBACK = new Set([
  '/welcome',
  '/sign-in',
  '/new-password',
  '/settings/account',
  '/settings/people/[id]',
  '/import/[id]',
  '/stores/labels/formats/[id]',
  '/stores/[id]/readings/[importId]',
]);

function addresses(): string[] {
  const demo = new Database(path.join(BANKS, 'demo', 'hilum.db'), { readonly: true });
  const found = Object.entries(PAGES)
    .filter(([pattern]) => !NOT_ON_LOOPBACK.has(pattern))
    .map(([pattern, { sample }]) => {
      if (!sample) return pattern;
      const value = demo.prepare(sample).pluck().get() as string;
      return pattern.replace(/\[\w+\]/, encodeURIComponent(value));
    });
  demo.close();
  return found;
}

for (const mode of MODES) {
  test(`every page at ${mode.width} px, ${mode.colorScheme}`, async ({ page }) => {
    test.setTimeout(240_000);
    await page.setViewportSize(mode);
    await page.emulateMedia({ colorScheme: mode.colorScheme });
    for (const address of addresses()) {
      await test.step(address, async () => {
        const response = await page.goto(address);
        expect(response?.status(), address).toBe(200);
        await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
        await page.locator('main details').evaluateAll((all) => {
          for (const one of all) (one as HTMLDetailsElement).open = true;
        });
        const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
        expect(overflow, `${address} is wider than the screen`).toBeLessThanOrEqual(0);
        const { violations } = await new AxeBuilder({ page }).withTags(TAGS).analyze();
        const told = violations.map(
          ({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(' ')).join(', ')}`,
        );
        expect.soft(told, `${address}, ${mode.width} px, ${mode.colorScheme}`).toEqual([]);
      });
    }
  });
}
