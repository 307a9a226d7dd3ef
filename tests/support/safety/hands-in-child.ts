/**
 * Hands that never rest, in a process of their own that a test may kill: one command after another, each announced
 * before ('begin') and acknowledged afterwards ('ack', with the last audit entry and the milliseconds it took) on the
 * standard output. Arguments: name of the stream of chance, how many commands, the acts to choose from.
 * It waits for a line on its input before it opens the bank, so that it can be started while another one works.
 */
import { writeSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { AppError } from '@/lib/server/app-error';
import { connections } from '@/lib/server/database/connections';
import { judgeWhatIsStale } from '@/lib/server/judging/keep-fresh';
import { randomFor } from '@/seed-demo/random';
import { chooseAttempt, perform } from './acts';
import { chooseByChance } from './chooser';

const say = (...words: (string | number)[]) => writeSync(1, `${words.join(' ')}\n`);
const [stream = '', most = '1000000', ...names] = process.argv.slice(2);

const lastAudit = () =>
  connections().rows.prepare<[], number>(`SELECT COALESCE(MAX("id"), 0) FROM "AuditEntry"`).pluck().get() ?? 0;

async function work(): Promise<void> {
  const choose = chooseByChance(randomFor(stream));
  say('begin', 0, 'start');
  const opened = performance.now();
  await judgeWhatIsStale();
  say('ack', 0, lastAudit(), performance.now() - opened);
  for (let turn = 1; turn <= Number(most); turn += 1) {
    const attempt = chooseAttempt(choose, names.length > 0 ? names : undefined);
    if (!attempt) continue;
    say('begin', turn, attempt.command.commandName);
    const began = performance.now();
    try {
      const result = await perform(attempt);
      say('ack', turn, lastAudit(), performance.now() - began, JSON.stringify(result ?? null));
    } catch (error) {
      if (!(error instanceof AppError)) throw error;
      say('refused', turn, error.code, JSON.stringify(error.fieldErrors), error.userMessage);
    }
  }
  say('done');
  process.exit(0);
}

say('ready');
for await (const _line of createInterface({ input: process.stdin })) {
  await work().catch((error: unknown) => {
    say('failed', 0, String(error instanceof Error ? (error.stack ?? error) : error).replace(/\n/g, ' | '));
    process.exit(1);
  });
}
