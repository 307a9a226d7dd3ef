import { readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from './support/bank';

const SERVER = '.next/standalone';

test('the built server carries no copy of the collection, of its secrets or of what tests leave', () => {
  const carried = readdirSync(SERVER);
  expect(carried).toContain('server.js');
  for (const folder of ['data', 'test-results', 'app', 'docs']) expect(carried).not.toContain(folder);
  const files = carried
    .filter((name) => name !== 'node_modules' && name !== '.next')
    .flatMap((name) => [
      name,
      ...(statSync(path.join(SERVER, name)).isDirectory() ? filesIn(path.join(SERVER, name)) : []),
    ]);
  expect(files.filter((name) => /(^|\/)(hilum\.db|secret|tls|photos|backups)(\/|$)/.test(name))).toEqual([]);
});

test('what was made while building, the worker of the phones among it, is given out as it was after something was saved', async ({
  page,
}) => {
  const made: { routes: Record<string, { routeType: string }> } = JSON.parse(
    readFileSync(path.join(SERVER, '.next/prerender-manifest.json'), 'utf8'),
  );
  const files = Object.entries(made.routes).flatMap(([address, { routeType }]) =>
    routeType === 'route' ? [address] : [],
  );
  expect(files).toContain('/worker/sw.js');
  await page.goto('/collection/accessions/A-0027/edit');
  await page.getByLabel('Notes').fill('seen from the pier');
  await page.getByRole('button', { name: /Save/ }).click();
  await expect(page.getByText('seen from the pier').first()).toBeVisible();
  for (const address of files) {
    const answer = await page.request.get(address);
    expect(answer.status(), address).toBe(200);
    expect(await answer.body(), address).toEqual(
      readFileSync(path.join(SERVER, '.next/server/app', `${address}.body`)),
    );
  }
});

function filesIn(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true, recursive: true }).map((entry) =>
    path.join(entry.parentPath, entry.name),
  );
}
