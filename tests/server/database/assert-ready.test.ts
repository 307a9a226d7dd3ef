import { rmSync } from 'node:fs';
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
  expect(outcome([])).toBe('ready');
});

it('is not ready when the program knows a change that the database lacks', () => {
  expect(outcome(['29990101000000_something_new'])).toBe('refused');
});

it('is not ready with a change that never finished, nor with none at all', () => {
  connections().bulk.exec('UPDATE "_prisma_migrations" SET finished_at = NULL');
  expect(outcome([])).toBe('refused');
  connections().bulk.exec('DELETE FROM "_prisma_migrations"');
  expect(outcome([])).toBe('refused');
});

it('is not ready without its file', () => {
  rmSync(bank.file);
  expect(outcome()).toBe('database-missing');
});
