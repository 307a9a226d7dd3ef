import { chmodSync, rmSync } from 'node:fs';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { closeConnections, connections } from '@/lib/server/database/connections';
import { countRows } from '@/tests/support/audit';
import { makeLot } from '@/tests/support/create-lot';
import { VOLUNTEER } from '@/tests/support/people';
import { refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

const bank = useTestBank({ fresh: 'each' });

let packetId = '';
const take = () => takeSeedOut(VOLUNTEER, { packetId, amount: '10', unit: 'seeds', reason: 'sowing' });

beforeEach(async () => {
  packetId = (await makeLot()).packetId;
});
afterEach(() => {
  delete process.env.HILUM_BUSY_TIMEOUT_MS;
});

it('says that another program is writing, writes nothing, and works again afterwards', async () => {
  await closeConnections();
  process.env.HILUM_BUSY_TIMEOUT_MS = '50';
  const other = new Database(bank.file);
  other.exec('BEGIN IMMEDIATE');
  const refused = await refusal(take());
  expect(refused.code).toBe('database-busy');
  expect(refused.userMessage).toContain('Nothing was saved');
  other.exec('ROLLBACK');
  other.close();
  expect(countRows('Movement')).toBe(1);
  expect((await take()).seedsLeft).toBe(990);
});

it('says that the collection cannot be written', async () => {
  await connections().writer.$executeRawUnsafe('PRAGMA query_only = 1');
  const refused = await refusal(take());
  expect(refused.code).toBe('database-read-only');
  expect(refused.userMessage).toContain('write-protected');
  expect(countRows('Movement')).toBe(1);
});

it.skipIf(process.getuid?.() === 0)('says so too when the file itself is write-protected', async () => {
  await closeConnections();
  chmodSync(bank.file, 0o444);
  chmodSync(bank.directory, 0o555);
  const refused = await refusal(take());
  chmodSync(bank.directory, 0o755);
  chmodSync(bank.file, 0o644);
  expect(refused.code).toBe('database-read-only');
});

it('says that the file is missing', async () => {
  await closeConnections();
  rmSync(bank.file);
  expect((await refusal(take())).code).toBe('database-missing');
});
