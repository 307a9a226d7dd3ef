import { expect, it } from 'vitest';
import { createStore } from '@/lib/server/commands/create-store';
import { updateStore } from '@/lib/server/commands/update-store';
import { connections } from '@/lib/server/database/connections';
import { lastAuditLine } from '@/tests/support/audit';
import { makeStore } from '@/tests/support/create-store';
import { STEWARD, VOLUNTEER } from '@/tests/support/people';
import { fieldMessage, refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

const stored = (id: string) =>
  connections().bulk.prepare(`SELECT * FROM "Store" WHERE "id" = ?`).get(id) as Record<string, unknown>;

it('adds a store in another one, with its humidity kept as a proportion', async () => {
  const freezer = await makeStore({ name: 'Freezer A', kind: 'freezer', targetTemperatureC: '-18,5' });
  const shelf = await makeStore({
    name: 'Shelf 2',
    kind: 'shelf',
    parentId: freezer.id,
    targetTemperatureC: '−18',
    targetHumidityPercent: '35',
  });
  expect(stored(freezer.id)).toMatchObject({ targetTemperatureC: -18.5, targetRelativeHumidity: null });
  expect(stored(shelf.id)).toMatchObject({
    parentId: freezer.id,
    targetTemperatureC: -18,
    targetRelativeHumidity: 0.35,
  });
  expect(lastAuditLine()).toMatchObject({
    entity: 'store',
    entityId: shelf.id,
    summary: 'Added shelf Shelf 2 in Freezer A',
  });
});

it('refuses a name that is in use, absurd climates and a place that is not there', async () => {
  await makeStore({ name: 'Freezer A' });
  expect(await fieldMessage(makeStore({ name: 'freezer a' }), 'name')).toContain('Freezer A already');
  expect(await fieldMessage(makeStore({ targetTemperatureC: '400' }), 'targetTemperatureC')).toContain('-196 and 60');
  expect(await fieldMessage(makeStore({ targetTemperatureC: '' }), 'targetTemperatureC')).toBe('Fill this in.');
  expect(await fieldMessage(makeStore({ targetHumidityPercent: '101' }), 'targetHumidityPercent')).toContain('100');
  expect(await fieldMessage(makeStore({ kind: 'moon' }), 'kind')).toBe('Choose the kind of store.');
  expect(await fieldMessage(makeStore({ parentId: 'no-such-store' }), 'parentId')).toContain('choose another');
});

it('changes a store and refuses a save over a newer one', async () => {
  const { id } = await makeStore({ name: 'Fridge B' });
  const input = { id, name: 'Fridge B', kind: 'fridge', targetTemperatureC: '6' };
  await updateStore(STEWARD, { ...input, version: 1 });
  expect(lastAuditLine()?.summary).toBe('Changed store Fridge B: target temperature from 4 to 6');
  const refused = await refusal(updateStore(STEWARD, { ...input, version: 1, targetTemperatureC: '8' }));
  expect(refused.code).toBe('conflict');
  expect(refused.userMessage).toContain('target temperature from 4 to 6');
  expect(stored(id)).toMatchObject({ targetTemperatureC: 6, version: 2 });
});

it('does not let a store lie inside itself, however deep', async () => {
  const room = await makeStore({ name: 'Room', kind: 'room' });
  const cabinet = await makeStore({ name: 'Cabinet', kind: 'cabinet', parentId: room.id });
  const box = await makeStore({ name: 'Box', kind: 'box', parentId: cabinet.id });
  const nest = (parentId: string) =>
    updateStore(STEWARD, { id: room.id, version: 1, name: 'Room', kind: 'room', targetTemperatureC: '4', parentId });
  expect(await fieldMessage(nest(room.id), 'parentId')).toContain('inside itself');
  expect(await fieldMessage(nest(box.id), 'parentId')).toContain('inside itself');
});

it('is for stewards', async () => {
  const input = { name: 'Fridge', kind: 'fridge', targetTemperatureC: '4' };
  expect((await refusal(createStore(VOLUNTEER, input))).code).toBe('not-allowed');
  expect((await refusal(updateStore(STEWARD, { ...input, id: 'no-such-store', version: 1 }))).code).toBe('not-found');
});
