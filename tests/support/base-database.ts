import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { TestProject } from 'vitest/node';
import { closeConnections } from '../../lib/server/database/connections';
import { migrate } from '../../lib/server/database/migrate';
import { loadReferenceFacts } from '../../lib/server/reference/load-reference-facts';

declare module 'vitest' {
  export interface ProvidedContext {
    baseDatabase: string;
  }
}

/** Migrates one empty bank with the reference facts, once a run; each test file works on its own copy. */
export default async function prepareBaseDatabase(project: TestProject) {
  const directory = mkdtempSync(path.join(tmpdir(), 'hilum-base-'));
  const file = path.join(directory, 'hilum.db');
  process.env.DATA_DIR = directory;
  await migrate(file, path.resolve('prisma/migrations'));
  await loadReferenceFacts();
  await closeConnections();
  project.provide('baseDatabase', file);
  return () => rmSync(directory, { recursive: true, force: true });
}
