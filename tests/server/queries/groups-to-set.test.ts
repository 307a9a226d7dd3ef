import { expect, test } from 'vitest';
import { giveUpTray } from '@/lib/server/commands/give-up-tray';
import { setNextGroup } from '@/lib/server/commands/set-next-group';
import { findGroupsToSet } from '@/lib/server/queries/groups-to-set';
import { recordTest } from '../../support/create-tested-lot';
import { VOLUNTEER } from '../../support/people';
import { setFirstGroup } from '../../support/set-first-group';
import { closeWith, trayNumbered } from '../../support/set-tray';
import { useTestBank } from '../../support/test-bank';

useTestBank({ fresh: 'each' });

const TODAY = '2026-11-25';
const waiting = async (day = TODAY) => (await findGroupsToSet(day)).map(({ lot }) => lot.number);

test('a group that was not clear waits for the next one, longest first; one that is counted or clear does not', async () => {
  await setFirstGroup({ lotNumber: 'L-2020-001', setOn: '2026-11-05' });
  await setFirstGroup({ lotNumber: 'L-2020-002', setOn: '2026-11-01' });
  await setFirstGroup({ lotNumber: 'L-2020-003' });
  await setFirstGroup({ lotNumber: 'L-2020-004' });
  expect(await waiting()).toEqual([]);
  await closeWith('T-0001', 34);
  await closeWith('T-0002', 33);
  await closeWith('T-0003', 38);
  expect(await waiting()).toEqual(['L-2020-002', 'L-2020-001']);
});

test('with its next group set it waits no more, until that is closed or given up', async () => {
  const { packetId, seriesId } = await setFirstGroup();
  await closeWith('T-0001', 34);
  await setNextGroup(VOLUNTEER, { seriesId, seedFrom: `packet:${packetId}`, setOn: '2026-11-24' });
  expect(await waiting()).toEqual([]);
  await giveUpTray(VOLUNTEER, { trayId: (await trayNumbered('T-0002')).id, reason: 'dried out' });
  expect(await waiting()).toEqual(['L-2020-001']);
});

test('a lot whose only groups were given up is planned anew', async () => {
  await setFirstGroup();
  await giveUpTray(VOLUNTEER, { trayId: (await trayNumbered('T-0001')).id, reason: 'dried out' });
  expect(await waiting()).toEqual([]);
});

test('a later test of the lot takes its place, an earlier one does not', async () => {
  await setFirstGroup();
  await closeWith('T-0001', 34);
  await recordTest({ setOn: '2026-10-01', finishedOn: '2026-10-15' });
  expect(await waiting()).toEqual(['L-2020-001']);
  await recordTest({ setOn: '2026-11-02', finishedOn: '2026-11-16' });
  expect(await waiting()).toEqual([]);
});

test('after 90 days without a group it is planned anew', async () => {
  await setFirstGroup({ setOn: '2026-11-01' });
  await closeWith('T-0001', 34);
  expect(await waiting('2027-01-30')).toEqual(['L-2020-001']);
  expect(await waiting('2027-01-31')).toEqual([]);
});
