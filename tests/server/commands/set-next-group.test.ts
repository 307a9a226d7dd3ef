import { expect, test } from 'vitest';
import { giveUpTray } from '@/lib/server/commands/give-up-tray';
import { setNextGroup } from '@/lib/server/commands/set-next-group';
import { findSeries } from '@/lib/server/queries/test-series';
import { createLotWithPacket } from '../../support/create-tested-lot';
import { heldIn } from '../../support/ledger';
import { VOLUNTEER } from '../../support/people';
import { fieldMessage, refusal } from '../../support/refusal';
import { setFirstGroup } from '../../support/set-first-group';
import { closeWith, setTraysOf, trayNumbered, trayRow } from '../../support/set-tray';
import { useTestBank } from '../../support/test-bank';

useTestBank({ fresh: 'each' });

const next = (seriesId: string, packetId: string, overrides: object = {}) =>
  setNextGroup(VOLUNTEER, { seriesId, seedFrom: `packet:${packetId}`, setOn: '2026-11-25', ...overrides });

test('a group that is not clear is followed by one as its plan says, done as the first was', async () => {
  const { packetId, lotId, seriesId } = await setFirstGroup();
  await closeWith('T-0001', 34);
  expect((await findSeries(seriesId))?.soFar).toMatchObject({ seedsTested: 40, alive: 34, nextSeeds: 40 });
  expect(await next(seriesId, packetId)).toEqual({ number: 'T-0002' });
  expect(heldIn(packetId)).toBe(920);
  const [first, second] = [await trayNumbered('T-0001'), await trayNumbered('T-0002')];
  expect(second).toMatchObject({
    lotId,
    seriesId,
    groupNumber: 2,
    firstCountOn: '2026-12-03',
    finalCountOn: '2026-12-11',
    countEveryDays: 4,
    prechillDays: 2,
    sequentialPlan: first.sequentialPlan,
    place: null,
  });
  expect(second.dishes.map(({ seeds }) => seeds)).toEqual([20, 20]);
});

test('nothing more is set while a group is being counted', async () => {
  const { packetId, seriesId } = await setFirstGroup();
  expect((await refusal(next(seriesId, packetId))).userMessage).toContain('T-0001');
  expect(heldIn(packetId)).toBe(960);
});

test('a clear group ends the test: it takes no more seed', async () => {
  const { packetId, seriesId } = await setFirstGroup();
  await closeWith('T-0001', 38);
  expect((await findSeries(seriesId))?.soFar.decision).toMatchObject({ decision: 'keep' });
  expect((await refusal(next(seriesId, packetId))).userMessage).toContain('no more seed');
});

test('a group that was given up is set again, with the next number', async () => {
  const { packetId, seriesId } = await setFirstGroup();
  await giveUpTray(VOLUNTEER, { trayId: (await trayNumbered('T-0001')).id, reason: 'dried out over the weekend' });
  await next(seriesId, packetId);
  expect(await trayNumbered('T-0002')).toMatchObject({ groupNumber: 2, seriesId });
  await closeWith('T-0002', 30);
  const series = await findSeries(seriesId);
  expect(series?.soFar).toMatchObject({ seedsTested: 40, alive: 30, decision: { decision: 'regrow' } });
  expect(series?.groups.map(({ status, result }) => [status, result?.alive ?? null])).toEqual([
    ['given-up', null],
    ['closed', 30],
  ]);
});

test('too little seed is refused beside the packet', async () => {
  const { packetId, seriesId } = await setFirstGroup({ seeds: 70 });
  await closeWith('T-0001', 34);
  expect(await fieldMessage(next(seriesId, packetId), 'seedFrom')).toMatch(/holds 30 seeds, and this takes 40/);
});

test('a group is not set before the one that it follows; what stands where is written down', async () => {
  const { packetId, seriesId } = await setFirstGroup();
  await closeWith('T-0001', 34);
  expect(await fieldMessage(next(seriesId, packetId, { setOn: '2026-10-31' }), 'setOn')).toContain('2026-11-01');
  expect(heldIn(packetId)).toBe(960);
  await next(seriesId, packetId, { setOn: '2026-11-01', place: 'incubator 1' });
  expect(await trayNumbered('T-0002')).toMatchObject({ setOn: '2026-11-01', place: 'incubator 1' });
});

test('a fixed test has no groups to follow', async () => {
  const { packetId } = await createLotWithPacket();
  await setTraysOf([trayRow({ seedFrom: `packet:${packetId}` })]);
  const { seriesId } = await trayNumbered('T-0001');
  expect(await findSeries(seriesId)).toBeNull();
  expect((await refusal(next(seriesId, packetId))).code).toBe('not-found');
});
