// `npm run mutate`: breaks lib/domain in thousands of small ways and counts how many the tests notice.
import { spawnSync } from 'node:child_process';
import { ensureInstalled, ROOT, requireNode, say } from './steps.mjs';

if (process.argv.includes('--help')) {
  say(`npm run mutate [-- <files>]

  <files>   what to break, such as 'lib/domain/statistics/**/*.ts'; all of lib/domain (but its reference facts) if left out

About a second a break on one core: the whole takes hours, a folder minutes. What was tried is remembered, so that a second
run tries only what has changed. Writes test-results/mutation/report.html.`);
  process.exit(0);
}
requireNode();
ensureInstalled();
const files = process.argv.slice(2);
const { status } = spawnSync(
  process.execPath,
  [
    'node_modules/@stryker-mutator/core/bin/stryker.js',
    'run',
    ...(files.length > 0 ? ['--mutate', files.join(',')] : []),
  ],
  { cwd: ROOT, stdio: 'inherit' },
);
process.exit(status ?? 1);
