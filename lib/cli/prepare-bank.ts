/**
 * Opens or makes the bank before the server starts: migrations, reference facts, the demo on the first run.
 * Prints one JSON line: { notes, setupCode }.
 */
import { randomInt } from 'node:crypto';
import { existsSync, renameSync, rmSync } from 'node:fs';
import path from 'node:path';
import { loadDemo } from '../../seed-demo/load-demo';
import { AppError } from '../server/app-error';
import { closeConnections, connections } from '../server/database/connections';
import { migrate } from '../server/database/migrate';
import { databaseFile, environment, isLoopbackOnly } from '../server/env';
import { loadReferenceFacts } from '../server/reference/load-reference-facts';
import { today } from '../server/today';

const MIGRATIONS = path.resolve('prisma/migrations');
const wantsEmptyBank = process.argv.includes('--empty');

async function prepareBank(): Promise<{ notes: string[]; setupCode: string | null }> {
  const notes = existsSync(databaseFile()) ? await openBank() : await makeBank();
  return { notes, setupCode: isLoopbackOnly() || hasAccounts() ? null : newSetupCode() };
}

async function openBank(): Promise<string[]> {
  const { applied, backup } = await migrate(databaseFile(), MIGRATIONS);
  await loadReferenceFacts();
  return applied.length > 0 ? [`Brought the collection up to date; the state before is in ${backup}.`] : [];
}

/** A new bank is made beside its place and moved there when it is whole, so that a kill leaves nothing half made. */
async function makeBank(): Promise<string[]> {
  const place = databaseFile();
  const dataDirectory = environment().DATA_DIR;
  const workshop = path.resolve(dataDirectory, 'being-made');
  rmSync(workshop, { recursive: true, force: true });
  process.env.DATA_DIR = workshop;
  await migrate(databaseFile(), MIGRATIONS);
  await loadReferenceFacts();
  const notes = ['Made a new collection.'];
  if (!wantsEmptyBank) {
    const demo = await loadDemo(today());
    notes.push(
      `Loaded the demo collection: ${demo.accessions} accessions, ${demo.lots} lots. Begin empty with: npm run up -- --empty`,
    );
  }
  await closeConnections();
  renameSync(path.join(workshop, 'hilum.db'), place);
  rmSync(workshop, { recursive: true, force: true });
  process.env.DATA_DIR = dataDirectory;
  return notes;
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
