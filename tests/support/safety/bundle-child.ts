import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import path from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll } from 'vitest';

/** Packages written for `require` find it, though the bundle is a module. */
const REQUIRE = `import { createRequire as requireOfChild } from 'node:module';
const require = requireOfChild(import.meta.url);
const __filename = new URL(import.meta.url).pathname, __dirname = process.cwd();`;

/**
 * Makes one plain JavaScript file of a program under tests/support, so that a test can start it some hundreds of times:
 * through a compiler each start would take seconds. The file lies in the project, where it finds its packages.
 *
 * @param program  file name in this folder
 */
export function useBundledChild(program: string): { file: string } {
  const child = { file: '' };
  let folder = '';
  beforeAll(async () => {
    mkdirSync('test-results', { recursive: true });
    folder = mkdtempSync(path.resolve('test-results/child-'));
    child.file = path.join(folder, program.replace(/\.ts$/, '.mjs'));
    await build({
      entryPoints: [path.resolve('tests/support/safety', program)],
      outfile: child.file,
      bundle: true,
      platform: 'node',
      target: 'node20',
      format: 'esm',
      external: ['better-sqlite3', '@node-rs/argon2'],
      banner: { js: REQUIRE },
      alias: { '@': path.resolve('.'), 'server-only': path.resolve('tests/support/server-only.ts') },
      logLevel: 'warning',
    });
  }, 60_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return child;
}
