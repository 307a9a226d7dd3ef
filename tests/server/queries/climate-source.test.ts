import { expect, it } from 'vitest';
import { toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { connections } from '@/lib/server/database/connections';
import { climateSources } from '@/lib/server/queries/climate-source';
import { makeStore } from '@/tests/support/create-store';
import { logReadings } from '@/tests/support/log-readings';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each', today: '2026-11-25' });

const noonOf = (date: string) => toEpochDay(date) * 86_400 + 43_200;

it('names a store its own logger, and the box in it that of the store around it', async () => {
  const fridge = await makeStore({ name: 'Fridge A' });
  const box = await makeStore({ name: 'Box 1', kind: 'box', parentId: fridge.id });
  const own = { kind: 'logged', inStore: null, lastOn: '2026-11-24', stopped: false };
  logReadings(fridge.id, [
    [noonOf('2026-11-24'), 4],
    [noonOf('2026-11-20'), 4],
  ]);
  expect(climateSources().get(fridge.id)).toEqual(own);
  expect(climateSources().get(box.id)).toEqual({ ...own, inStore: 'Fridge A' });
});

it('says that a logger stopped once its last reading is more than two days before today', async () => {
  const { id } = await makeStore();
  logReadings(id, [[toEpochDay('2026-11-23') * 86_400 - 1, 4]]);
  expect(climateSources().get(id)).toMatchObject({ kind: 'logged', lastOn: '2026-11-22', stopped: true });
  logReadings(id, [[toEpochDay('2026-11-23') * 86_400, 4]]);
  expect(climateSources().get(id)).toMatchObject({ lastOn: '2026-11-23', stopped: false });
});

it('falls back to the target where nothing was logged, or all of it was taken back', async () => {
  const { id } = await makeStore();
  expect(climateSources().get(id)).toEqual({ kind: 'target', ofStore: null });
  logReadings(id, [[noonOf('2026-11-24'), 4]]);
  const { bulk } = connections();
  bulk.prepare(`UPDATE "Reading" SET "takenBack" = 1 WHERE "storeId" = ?`).run(id);
  expect(climateSources().get(id)).toEqual({ kind: 'target', ofStore: null });
});
