/**
 * Opens or makes the bank before the server starts: migrations, reference facts, the demo on the first run.
 * Prints one JSON line: { notes, setupCode }.
 */
import { randomInt } from 'node:crypto';
import path from 'node:path';
import { loadDemo } from '../../seed-demo/load-demo';
import { AppError } from '../server/app-error';
import { closeConnections, connections } from '../server/database/connections';
import { migrate } from '../server/database/migrate';
import { databaseFile, environment, isLoopbackOnly } from '../server/env';
import { loadReferenceFacts } from '../server/reference/load-reference-facts';
import { today } from '../server/today';

const wantsEmptyBank = process.argv.includes('--empty');

async function prepareBank(): Promise<{ notes: string[]; setupCode: string | null }> {
  const notes: string[] = [];
  const outcome = await migrate(databaseFile(), path.resolve('prisma/migrations'));
  if (outcome.created) notes.push('Made a new collection.');
  else if (outcome.applied.length > 0)
    notes.push(`Brought the collection up to date; the state before is in ${outcome.backup}.`);
  await loadReferenceFacts();
  if (outcome.created && !wantsEmptyBank) {
    const demo = await loadDemo(today());
    notes.push(
      `Loaded the demo collection: ${demo.accessions} accessions, ${demo.lots} lots. Begin empty with: npm run up -- --empty`,
    );
  }
  return { notes, setupCode: isLoopbackOnly() || hasAccounts() ? null : newSetupCode() };
}

function hasAccounts(): boolean {
  const row = connections()
    .bulk.prepare<[], { accounts: number }>('SELECT COUNT(*) AS "accounts" FROM "Account"')
    .get();
  return (row?.accounts ?? 0) > 0;
}

/** Eight digits, shown in the terminal only: whoever can read it here may become the first steward. */
function newSetupCode(): string {
  return process.env.HILUM_SETUP_CODE || String(randomInt(10_000_000, 99_999_999));
}

try {
  environment();
  const prepared = await prepareBank();
  await closeConnections();
  process.stdout.write(`${JSON.stringify(prepared)}\n`);
} catch (error) {
  process.stderr.write(`${error instanceof AppError ? error.userMessage : (error as Error).stack}\n`);
  process.exit(1);
}
