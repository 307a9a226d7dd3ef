import { readdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from '@playwright/test';

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

function filesIn(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true, recursive: true }).map((entry) =>
    path.join(entry.parentPath, entry.name),
  );
}
