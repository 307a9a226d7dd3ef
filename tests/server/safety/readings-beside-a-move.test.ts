import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { expect, it } from 'vitest';
import { importReadings } from '@/lib/server/commands/import-readings';
import { connections } from '@/lib/server/database/connections';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { LOGGER_TEXT_LAYOUT, loggerText, uploadLoggerText } from '@/tests/support/logger-text';
import { STEWARD } from '@/tests/support/people';
import { judgementsFromScratch } from '@/tests/support/safety/judgements-agree';
import { useTestBank } from '@/tests/support/test-bank';

const bank = useTestBank({ today: '2026-11-25' });

/** Another program that is moving a packet, and needs a while for it. It says so when it has begun. */
const MOVE = `
  const database = new (require('better-sqlite3'))(process.argv[1]);
  database.exec('BEGIN IMMEDIATE');
  database.prepare('INSERT INTO "Placement" ("id", "packetId", "storeId", "from", "container", "moisturePercent") VALUES (?, ?, ?, ?, ?, ?)')
    .run('moved-by-another', process.argv[2], process.argv[3], '2026-10-10', 'glass-jar', 7.5);
  console.log('moving');
  setTimeout(() => { database.exec('COMMIT'); database.close(); }, 1500);`;

it('judges a lot anew that another program put into the store while the import waited for it', async () => {
  const logged = await makeStore({ kind: 'room', targetTemperatureC: '18' });
  const lot = await makeLot();
  const hot = Array.from({ length: 60 }, () => 40);
  const importId = await uploadLoggerText(logged.id, loggerText('2026-09-20T00:00Z', hot, { everySeconds: 86_400 }));
  const other = spawn(process.execPath, ['-e', MOVE, bank.file, lot.packetId, logged.id], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const gone = once(other, 'exit');
  await once(other.stdout, 'data');
  await importReadings(STEWARD, { importId, ...LOGGER_TEXT_LAYOUT });
  expect((await gone)[0]).toBe(0);
  const judged = await judgementsFromScratch(connections().bulk, '2026-11-25');
  expect(judged.kept).toEqual(judged.fresh);
});
