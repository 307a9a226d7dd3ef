import { expect, it } from 'vitest';
import { movePacket } from '@/lib/server/commands/move-packet';
import { moveStore } from '@/lib/server/commands/move-store';
import { updateStore } from '@/lib/server/commands/update-store';
import { connections } from '@/lib/server/database/connections';
import { staysUntil } from '@/lib/server/judging/age-tests';
import { loadLots } from '@/lib/server/judging/load-lots';
import { storeClimates } from '@/lib/server/judging/store-climates';
import { lastAuditLine } from '@/tests/support/audit';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { STEWARD, VISITOR, VOLUNTEER } from '@/tests/support/people';
import { fieldMessage, refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

const OLD = { harvestedOn: '2022-09-20', storedOn: '2022-10-05', container: 'foil-pouch' };

/** A box in a fridge, a freezer beside it, and a packet in the box since 2022. */
async function boxInFridge(packet: Record<string, unknown> = {}) {
  const fridge = await makeStore({ name: 'Fridge', targetTemperatureC: '5' });
  const freezer = await makeStore({ name: 'Freezer', kind: 'freezer', targetTemperatureC: '-18' });
  const box = await makeStore({ name: 'Box 7', kind: 'box', parentId: fridge.id, inheritsTarget: 'on' });
  const lot = await makeLot({ ...OLD, storeId: box.id, ...packet });
  return { fridge, freezer, box, lot };
}

const storedOf = (lotId: string) =>
  connections()
    .bulk.prepare(`SELECT "viabilityMedian", "storeName", "chanceBelow" FROM "LotJudgement" WHERE "lotId" = ?`)
    .get(lotId) as { viabilityMedian: number; storeName: string; chanceBelow: number };

function temperaturesOf(lotId: string) {
  const { bulk } = connections();
  const climates = storeClimates(bulk);
  const packet = loadLots(bulk, [lotId])[0]?.packets[0];
  if (!packet) throw new Error('no packet');
  return staysUntil(packet, climates, '2026-11-25').map(({ from, climateId }) => [
    from,
    climates.climateOf(climateId).target.temperatureC,
  ]);
}

it('takes everything in the box with it: before the move one climate, since then the other', async () => {
  const { freezer, box, lot } = await boxInFridge();
  const warm = storedOf(lot.lotId).viabilityMedian;
  await moveStore(VOLUNTEER, { id: box.id, version: 1, parentId: freezer.id, from: '2024-01-10' });
  expect(temperaturesOf(lot.lotId)).toEqual([
    ['2022-10-05', 5],
    ['2024-01-10', -18],
  ]);
  expect(storedOf(lot.lotId).viabilityMedian).toBeGreaterThan(warm);
  expect(lastAuditLine()?.summary).toBe('Moved box Box 7 from Fridge to Freezer on 2024-01-10, with 1 packet in it');
});

it('gives its packets the same ageing as moving each of them would', async () => {
  const { freezer, box, lot } = await boxInFridge();
  const alike = await makeLot({ ...OLD, storeId: (await makeStore({ targetTemperatureC: '5' })).id });
  await moveStore(VOLUNTEER, { id: box.id, version: 1, parentId: freezer.id, from: '2024-01-10' });
  await movePacket(VOLUNTEER, {
    packetId: alike.packetId,
    storeId: freezer.id,
    container: 'foil-pouch',
    moisturePercent: '7,5',
    from: '2024-01-10',
  });
  expect(storedOf(lot.lotId).viabilityMedian).toBeCloseTo(storedOf(alike.lotId).viabilityMedian, 12);
});

it('corrects where a store stood all along', async () => {
  const { freezer, box, lot } = await boxInFridge();
  await moveStore(VOLUNTEER, { id: box.id, version: 1, parentId: freezer.id, correction: 'on' });
  expect(temperaturesOf(lot.lotId)).toEqual([['2022-10-05', -18]]);
});

it('follows the target of the store that it stands in now', async () => {
  const { freezer, box, lot } = await boxInFridge();
  await moveStore(VOLUNTEER, { id: box.id, version: 1, parentId: freezer.id, from: '2024-01-10' });
  const changed = { id: freezer.id, version: 1, name: 'Freezer', kind: 'freezer', targetTemperatureC: '-20' };
  await updateStore(STEWARD, { ...changed, setSince: '2025-01-01' });
  expect(temperaturesOf(lot.lotId)).toEqual([
    ['2022-10-05', 5],
    ['2024-01-10', -18],
    ['2025-01-01', -20],
  ]);
});

it('does not let a store lie inside itself, however deep, nor on a day of the past', async () => {
  const room = await makeStore({ name: 'Room', kind: 'room' });
  const cabinet = await makeStore({ name: 'Cabinet', kind: 'cabinet', parentId: room.id });
  const box = await makeStore({ name: 'Box', kind: 'box', parentId: cabinet.id });
  const nest = (parentId: string) => moveStore(STEWARD, { id: room.id, version: 1, parentId });
  expect(await fieldMessage(nest(room.id), 'parentId')).toContain('inside itself');
  expect(await fieldMessage(nest(box.id), 'parentId')).toContain('inside itself');
  await moveStore(STEWARD, { id: box.id, version: 1, from: '2025-06-01' });
  const backdated = moveStore(STEWARD, { id: room.id, version: 1, parentId: box.id, from: '2025-05-01' });
  expect(await fieldMessage(backdated, 'parentId')).toContain('then or now');
  await moveStore(STEWARD, { id: room.id, version: 1, parentId: box.id, from: '2025-06-01' });
});

it('warns before a box with moist seed goes into a freezer, and obeys whoever insists', async () => {
  const { freezer, box } = await boxInFridge({ moisturePercent: '15', storeAnyway: 'on' });
  const move = { id: box.id, version: 1, parentId: freezer.id };
  expect(await fieldMessage(moveStore(VOLUNTEER, move), 'parentId')).toContain('Freezing can kill');
  await moveStore(VOLUNTEER, { ...move, moveAnyway: 'on' });
});

it('warns when it does not fit', async () => {
  const { box } = await boxInFridge();
  const drawer = await makeStore({ kind: 'box', capacityPackets: '1' });
  await makeLot({ ...OLD, storeId: drawer.id });
  const move = { id: box.id, version: 1, parentId: drawer.id };
  expect(await fieldMessage(moveStore(VOLUNTEER, move), 'parentId')).toContain('room for 1 packets and holds 1');
});

it('refuses a day before the last move, the same place, and a move over a newer one', async () => {
  const { fridge, freezer, box } = await boxInFridge();
  expect(
    await fieldMessage(moveStore(VOLUNTEER, { id: box.id, version: 1, parentId: fridge.id }), 'parentId'),
  ).toContain('there already');
  await moveStore(VOLUNTEER, { id: box.id, version: 1, parentId: freezer.id, from: '2024-01-10' });
  const back = { id: box.id, version: 2, parentId: fridge.id };
  expect(await fieldMessage(moveStore(VOLUNTEER, { ...back, from: '2024-01-09' }), 'from')).toContain('2024-01-10');
  expect((await refusal(moveStore(VOLUNTEER, { ...back, version: 1 }))).code).toBe('conflict');
});

it('is not for visitors', async () => {
  expect((await refusal(moveStore(VISITOR, {}))).code).toBe('not-allowed');
});
