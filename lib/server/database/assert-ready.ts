import 'server-only';
import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { AppError } from '../app-error';
import { connections } from './connections';
import { explainFailure } from './explain-failure';

/**
 * The database can be read and has every change that this program was written for.
 *
 * @param wanted  names of the program's changes; a build that leaves their files out knows none, and is content with a
 *   history in which each is finished, because `npm run up` applies them before it starts the server
 * @throws AppError with the trouble's code: 'database-missing', 'database-busy', or 'refused' when a change is missing
 * Checked in tests/server/database/assert-ready.test.ts
 */
export function assertReady(wanted: string[] = changesOfProgram()): void {
  const history = readHistory();
  const done = new Set(history.filter((change) => change.finished_at !== null).map((change) => change.migration_name));
  const missing = [...wanted, ...history.map((change) => change.migration_name)].filter((name) => !done.has(name));
  if (done.size === 0 || missing.length > 0) {
    throw new AppError('refused', `The collection lacks changes: ${missing.join(', ') || 'all'}. Run 'npm run up'.`);
  }
}

function changesOfProgram(): string[] {
  // The whole path stands here as it is, so that the build takes these files along and no others.
  if (!existsSync(path.join(process.cwd(), 'prisma', 'migrations'))) return [];
  return readdirSync(path.join(process.cwd(), 'prisma', 'migrations'), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name);
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
