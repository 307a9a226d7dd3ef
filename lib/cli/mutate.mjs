// `npm run mutate`: breaks lib/domain in thousands of small ways and counts how many its tests notice.
import { renameSync } from 'node:fs';
import path from 'node:path';
import { ensureFolder, ensureInstalled, ROOT, requireNode, say, stop } from './steps.mjs';

const FOLDERS = ['statistics', 'germination', 'moisture', 'longevity', 'stock', 'pollination', 'regrow'];
const USAGE = `npm run mutate [-- <folders>]

  <folders>   of lib/domain: ${FOLDERS.join(', ')}; all of them if left out

Each break has to be noticed by the folder's own tests. Minutes to hours on two cores. What was tried is remembered, so that
a second run tries only what has changed. Writes test-results/mutation/<folder>.html and .json.`;

const asked = process.argv.slice(2);
if (asked.includes('--help')) {
  say(USAGE);
  process.exit(0);
}
const unknown = asked.filter((folder) => !FOLDERS.includes(folder));
if (unknown.length > 0) stop(`No such folder: ${unknown.join(', ')}\n\n${USAGE}`);
requireNode();
ensureInstalled();
const results = path.join(ROOT, 'test-results', 'mutation');
ensureFolder(results);

const { Stryker } = await import('@stryker-mutator/core');
let failed = false;
for (const folder of asked.length > 0 ? asked : FOLDERS) {
  say(`\n== ${folder}`);
  process.env.MUTATED_FOLDER = folder;
  const incrementalFile = path.join('test-results', 'mutation', `${folder}.incremental.json`);
  try {
    await new Stryker({ mutate: [`lib/domain/${folder}/**/*.ts`], incrementalFile }).runMutationTest();
    for (const kind of ['json', 'html'])
      renameSync(path.join(results, `report.${kind}`), path.join(results, `${folder}.${kind}`));
  } catch (error) {
    failed = true;
    say(String(error?.message ?? error));
  }
}
process.exit(failed ? 1 : 0);
