import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { expect, test } from './support/bank';
import { insertTrays } from './support/insert-trays';

/** What the bench's script may weigh, compressed, over what every page of the framework carries. */
const MOST_KILOBYTES = 60;

const [FIRST, SECOND] = ['T-8001', 'T-8002'] as const;

// The worker keeps the page and its files; here they are to come over the network.
test.use({ serviceWorkers: 'block' });

test.beforeAll(({ bankDirectory }) => {
  // Side by side in the round, whatever else stands in this bank.
  insertTrays(bankDirectory, [
    { number: FIRST, place: 'Weighed' },
    { number: SECOND, place: 'Weighed' },
  ]);
});

/**
 * An empty page of the framework carries at least the files that its build names for every route: React, the router and
 * the loader of modules. Nothing else is taken off, so what an empty page loads besides counts against the bench.
 */
function framework(): { file: string; bytes: number }[] {
  const { rootMainFiles } = JSON.parse(readFileSync('.next/build-manifest.json', 'utf8')) as {
    rootMainFiles: string[];
  };
  return rootMainFiles.map((file) => ({ file, bytes: gzipSync(readFileSync(`.next/${file}`)).length }));
}

test('the bench’s script weighs at most 60 KB over an empty page of the framework', async ({ page }) => {
  const scripts = new Map<string, Promise<number>>();
  page.on('response', (response) => {
    if (response.request().resourceType() !== 'script') return;
    const file = new URL(response.url()).pathname.replace('/_next/', '');
    // Weighed as gzip would send it, whatever the server in between does.
    scripts.set(
      file,
      response.body().then((body) => gzipSync(body).length),
    );
  });
  // Everything is used once, so that what is loaded only then is weighed too.
  await page.goto('/bench');
  await page.getByRole('link', { name: new RegExp(FIRST) }).click();
  await page.getByRole('button', { name: 'None new in all 2' }).click();
  await page.getByRole('button', { name: 'Done' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText(SECOND);
  await page.waitForLoadState('networkidle');

  const base = framework();
  expect(base.length, 'the framework’s files are known').toBeGreaterThan(0);
  for (const { file } of base) expect([...scripts.keys()], 'the bench carries them too').toContain(file);
  const own: [file: string, bytes: number][] = [];
  for (const [file, weighed] of scripts) {
    if (!base.some((one) => one.file === file)) own.push([file, await weighed]);
  }
  const kilobytes = own.reduce((sum, [, bytes]) => sum + bytes, 0) / 1000;
  const carried = base.reduce((sum, { bytes }) => sum + bytes, 0) / 1000;
  test.info().annotations.push({
    type: 'script weight',
    description: `${kilobytes.toFixed(1)} KB over ${carried.toFixed(1)} KB of the framework`,
  });
  console.log(`Bench: ${kilobytes.toFixed(1)} KB of script over ${carried.toFixed(1)} KB of the framework.`, own);
  expect(own.length, 'the bench has a script').toBeGreaterThan(0);
  expect(kilobytes).toBeLessThanOrEqual(MOST_KILOBYTES);
});
