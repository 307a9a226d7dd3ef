/**
 * Imports a waiting file in a process of its own that a test may kill. Arguments: 'spreadsheet' or 'readings', and what
 * the command takes, as JSON. It waits for a line on its input before it opens the bank.
 */
import { writeSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { importReadings } from '@/lib/server/commands/import-readings';
import { runImport } from '@/lib/server/commands/run-import';
import { judgeWhatIsStale } from '@/lib/server/judging/keep-fresh';
import { STEWARD } from '../people';

const say = (...words: (string | number)[]) => writeSync(1, `${words.join(' ')}\n`);
const [kind, input = '{}'] = process.argv.slice(2);
const importFile = kind === 'readings' ? importReadings : runImport;

async function work(): Promise<void> {
  await judgeWhatIsStale();
  say('begin', 1, importFile.commandName);
  const began = performance.now();
  await importFile(STEWARD, JSON.parse(input));
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
