import path from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from './support/bank';
import { BANKS } from './support/prepare-banks';
import { expectReadable, lookIn, MODES } from './support/readable';
import { PAGES } from './support/who-may';

/**
 * Every page of the demo bank, at phone and laptop width, in light and dark: no accessibility violation that axe can find,
 * nothing wider than the screen, no error in the console (the fixture sees to that).
 */

/** Pages that only exist with accounts; doors.spec.ts goes to them. */
const NOT_ON_LOOPBACK = new Set(['/sign-in', '/new-password', '/settings/account', '/settings/people/[id]']);

/** Pages that the demo has nothing for, or that lead on to another, have tests of their own. */
function addresses(): string[] {
  const demo = new Database(path.join(BANKS, 'demo', 'hilum.db'), { readonly: true });
  const found = Object.entries(PAGES)
    .filter(([pattern, { answers }]) => answers === undefined && !NOT_ON_LOOPBACK.has(pattern))
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
    test.setTimeout(480_000);
    await lookIn(page, mode);
    for (const address of addresses()) {
      await test.step(address, async () => {
        const response = await page.goto(address);
        expect(response?.status(), address).toBe(200);
        await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
        await expectReadable(page, `${address}, ${mode.width} px, ${mode.colorScheme}`);
      });
    }
  });
}
