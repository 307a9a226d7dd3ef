import { mkdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { assertReady } from '@/lib/server/database/assert-ready';
import { connections } from '@/lib/server/database/connections';
import { useTestBank } from '@/tests/support/test-bank';

const bank = useTestBank({ fresh: 'each' });
const outcome = (...call: Parameters<typeof assertReady>) => {
  try {
    assertReady(...call);
    return 'ready';
  } catch (error) {
    return (error as { code: string }).code;
  }
};

it('is ready when every change was applied', () => {
  expect(outcome()).toBe('ready');
  expect(outcome(path.join(bank.directory, 'no such folder'))).toBe('ready');
});

it('is not ready when the program knows a change that the database lacks', () => {
  const folder = path.join(bank.directory, 'migrations');
  mkdirSync(path.join(folder, '29990101000000_something_new'), { recursive: true });
  expect(outcome(folder)).toBe('refused');
});

it('is not ready with a change that never finished, nor with none at all', () => {
  const elsewhere = path.join(bank.directory, 'no such folder');
  connections().bulk.exec('UPDATE "_prisma_migrations" SET finished_at = NULL');
  expect(outcome(elsewhere)).toBe('refused');
  connections().bulk.exec('DELETE FROM "_prisma_migrations"');
  expect(outcome(elsewhere)).toBe('refused');
});

it('is not ready without its file', () => {
  rmSync(bank.file);
  expect(outcome()).toBe('database-missing');
});
