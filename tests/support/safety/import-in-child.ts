/**
 * Imports a waiting spreadsheet in a process of its own that a test may kill. Arguments: the import's id and its columns
 * as JSON. It waits for a line on its input before it opens the bank.
 */
import { writeSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { runImport } from '@/lib/server/commands/run-import';
import { judgeWhatIsStale } from '@/lib/server/judging/keep-fresh';
import { STEWARD } from '../people';

const say = (...words: (string | number)[]) => writeSync(1, `${words.join(' ')}\n`);
const [importId, columns = '{}'] = process.argv.slice(2);

async function work(): Promise<void> {
  await judgeWhatIsStale();
  say('begin', 1, 'run-import');
  const began = performance.now();
  await runImport(STEWARD, { importId, columns: JSON.parse(columns), createNames: 'on' });
  say('ack', 1, performance.now() - began);
  process.exit(0);
}

say('ready');
for await (const _line of createInterface({ input: process.stdin })) {
  await work().catch((error: unknown) => {
    say('failed', 1, String(error instanceof Error ? (error.stack ?? error) : error).replace(/\n/g, ' | '));
    process.exit(1);
  });
}
