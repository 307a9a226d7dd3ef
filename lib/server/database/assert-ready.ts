import 'server-only';
import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { AppError } from '../app-error';
import { connections } from './connections';
import { explainFailure } from './explain-failure';

/**
 * The database can be read and has every change that this program was written for.
 *
 * @param migrationsDirectory  where the program's changes lie; a build that leaves them out is content with a history
 *   in which none is unfinished, because `npm run up` applies them before it starts the server
 * @throws AppError with the trouble's code: 'database-missing', 'database-busy', or 'refused' when a change is missing
 * Checked in tests/server/database/assert-ready.test.ts
 */
export function assertReady(migrationsDirectory: string = path.join(process.cwd(), 'prisma', 'migrations')): void {
  const history = readHistory();
  const done = new Set(history.filter((change) => change.finished_at !== null).map((change) => change.migration_name));
  const wanted = existsSync(migrationsDirectory)
    ? readdirSync(migrationsDirectory, { withFileTypes: true })
        .filter((entry) => entry.isDirectory())
        .map((entry) => entry.name)
    : history.map((change) => change.migration_name);
  const missing = wanted.filter((name) => !done.has(name));
  if (done.size === 0 || missing.length > 0) {
    throw new AppError('refused', `The collection lacks changes: ${missing.join(', ') || 'all'}. Run 'npm run up'.`);
  }
}

function readHistory() {
  try {
    return connections()
      .bulk.prepare<[], { migration_name: string; finished_at: string | null }>(
        'SELECT migration_name, finished_at FROM "_prisma_migrations" WHERE rolled_back_at IS NULL',
      )
      .all();
  } catch (error) {
    throw explainFailure(error) ?? error;
  }
}
