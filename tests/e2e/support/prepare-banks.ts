import { spawnSync } from 'node:child_process';
import { mkdirSync, rmSync } from 'node:fs';
import path from 'node:path';

/** Where the prepared data folders lie; each test server works on a copy of one. */
export const BANKS = path.resolve('test-results/banks');
export const TEST_TODAY = '2026-11-25';

/** Prepares two banks once a run, as `npm run up` would: one with the demo collection, one empty. */
export default function prepareBanks(): void {
  rmSync(BANKS, { recursive: true, force: true });
  prepare('demo', []);
  prepare('empty', ['--empty']);
}

function prepare(name: string, options: string[]): void {
  const directory = path.join(BANKS, name);
  mkdirSync(directory, { recursive: true });
  const result = spawnSync(
    process.execPath,
    ['--conditions=react-server', '--import', 'tsx', 'lib/cli/prepare-bank.ts', ...options],
    { env: { ...process.env, DATA_DIR: directory, HILUM_TODAY: TEST_TODAY }, encoding: 'utf8' },
  );
  if (result.status !== 0) throw new Error(`preparing the ${name} bank failed: ${result.stderr}`);
}
