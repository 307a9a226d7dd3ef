// `npm run calibrate`: whether the lot model's bands and chances keep their word, over simulated collections.
import { spawnSync } from 'node:child_process';
import { ensureInstalled, ROOT, requireNode, say, typescriptArguments } from './steps.mjs';

if (process.argv.includes('--help')) {
  say(`npm run calibrate

Simulates 40,000 lots in each of nine scenarios (about two minutes; the same figures on every machine) and writes them
into docs/methods/calibration.md. Ends with an error when a band or a chance is off although the model's beliefs hold.`);
  process.exit(0);
}
requireNode();
ensureInstalled();
const { status } = spawnSync(process.execPath, typescriptArguments('tests/calibration/run.ts'), {
  cwd: ROOT,
  stdio: 'inherit',
});
process.exit(status ?? 1);
