import { expect, it } from 'vitest';
import { toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { createStore } from '@/lib/server/commands/create-store';
import { updateStore } from '@/lib/server/commands/update-store';
import { connections } from '@/lib/server/database/connections';
import { storeClimates } from '@/lib/server/judging/store-climates';
import { lastAuditLine } from '@/tests/support/audit';
import { makeLot } from '@/tests/support/create-lot';
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
  expect(await fieldMessage(makeStore({ targetTemperatureC: '' }), 'targetTemperatureC')).toContain('Fill this in');
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

it('is for stewards', async () => {
  const input = { name: 'Fridge', kind: 'fridge', targetTemperatureC: '4' };
  expect((await refusal(createStore(VOLUNTEER, input))).code).toBe('not-allowed');
  expect((await refusal(updateStore(STEWARD, { ...input, id: 'no-such-store', version: 1 }))).code).toBe('not-found');
});

it('takes the target of the store around it, and follows when that is set anew', async () => {
  const fridge = await makeStore({ name: 'Fridge', targetTemperatureC: '4', targetHumidityPercent: '30' });
  const shelf = await makeStore({ parentId: fridge.id, inheritsTarget: 'on', targetTemperatureC: '' });
  const box = await makeStore({ parentId: shelf.id, inheritsTarget: 'on', targetTemperatureC: '' });
  expect(stored(box.id)).toMatchObject({ targetTemperatureC: 4, targetRelativeHumidity: 0.3 });
  await updateStore(STEWARD, { id: fridge.id, version: 1, name: 'Fridge', kind: 'fridge', targetTemperatureC: '7' });
  expect(stored(box.id)).toMatchObject({ targetTemperatureC: 7, targetRelativeHumidity: null });
});

it('wants a temperature from a store that stands by itself', async () => {
  const message = await fieldMessage(makeStore({ inheritsTarget: 'on', targetTemperatureC: '' }), 'inheritsTarget');
  expect(message).toContain('Say what it lies in');
  const { id, name } = await makeStore();
  const untargeted = updateStore(STEWARD, { id, version: 1, name, kind: 'fridge', inheritsTarget: 'on' });
  expect(await fieldMessage(untargeted, 'inheritsTarget')).toContain('stands by itself');
});

it('keeps what a store was set to before, unless that was a slip of the pen', async () => {
  const { id, name } = await makeStore({ targetTemperatureC: '4' });
  const input = { id, name, kind: 'fridge' };
  await updateStore(STEWARD, { ...input, version: 1, targetTemperatureC: '5' });
  await updateStore(STEWARD, { ...input, version: 2, targetTemperatureC: '8', setSince: '2025-06-01' });
  const { climatesThrough, sourceOf } = storeClimates(connections().bulk);
  expect(
    climatesThrough(id).map(({ fromDay, climateId }) => [fromDay, sourceOf(climateId).target.temperatureC]),
  ).toEqual([
    [-Infinity, 5],
    [toEpochDay('2025-06-01'), 8],
  ]);
  const earlier = updateStore(STEWARD, { ...input, version: 3, targetTemperatureC: '6', setSince: '2025-01-01' });
  expect(await fieldMessage(earlier, 'setSince')).toContain('since 2025-06-01');
});

it('is closed only when nothing lies in it, and takes nothing in afterwards', async () => {
  const full = await makeStore();
  await makeLot({ storeId: full.id, harvestedOn: '2024-09-20', storedOn: '2024-10-05' });
  const close = (id: string, called: unknown) =>
    updateStore(STEWARD, {
      id,
      version: 1,
      name: called,
      kind: 'fridge',
      targetTemperatureC: '4',
      closedOn: '2025-06-01',
    });
  expect(await fieldMessage(close(full.id, full.name), 'closedOn')).toContain('1 packet lies in it');
  const empty = await makeStore();
  await close(empty.id, empty.name);
  expect(await fieldMessage(makeStore({ parentId: empty.id }), 'parentId')).toContain('no longer used');
});
