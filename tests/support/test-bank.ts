import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, beforeEach, inject } from 'vitest';
import { closeConnections } from '@/lib/server/database/connections';

/**
 * Gives each test file its own real SQLite file, migrated, with the reference facts and one bank in it: a copy of the
 * base that tests/support/base-database.ts makes once a run. `fresh: 'each'` copies it anew before every test.
 */
export function useTestBank({
  fresh = 'file',
  today = '2026-11-25',
}: {
  fresh?: 'file' | 'each';
  today?: string;
} = {}) {
  const bank = { directory: '', file: '' };
  const open = async () => {
    await close();
    bank.directory = mkdtempSync(path.join(tmpdir(), 'hilum-test-'));
    bank.file = path.join(bank.directory, 'hilum.db');
    copyFileSync(inject('baseDatabase'), bank.file);
    process.env.DATA_DIR = bank.directory;
    process.env.HILUM_TODAY = today;
  };
  const close = async () => {
    await closeConnections();
    if (bank.directory) rmSync(bank.directory, { recursive: true, force: true });
    bank.directory = '';
  };
  if (fresh === 'each') beforeEach(open);
  else beforeAll(open);
  afterAll(close);
  return bank;
}
