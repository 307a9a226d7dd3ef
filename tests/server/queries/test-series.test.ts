import { expect, test } from 'vitest';
import { reopenTray } from '@/lib/server/commands/reopen-tray';
import { setNextGroup } from '@/lib/server/commands/set-next-group';
import { findAllSeries, findSeries } from '@/lib/server/queries/test-series';
import { VOLUNTEER } from '../../support/people';
import { setFirstGroup } from '../../support/set-first-group';
import { closeWith, trayNumbered } from '../../support/set-tray';
import { useTestBank } from '../../support/test-bank';

useTestBank({ fresh: 'each' });

test('a test in groups has its plan, its groups in the order in which they were set, and their sum', async () => {
  const { packetId, seriesId } = await setFirstGroup();
  await closeWith('T-0001', 34);
  await setNextGroup(VOLUNTEER, { seriesId, seedFrom: `packet:${packetId}`, setOn: '2026-11-24' });
  const series = await findSeries(seriesId);
  expect(series?.plan.line).toBe(0.85);
  expect(series?.groups.map(({ number, groupNumber, seeds, status }) => [number, groupNumber, seeds, status])).toEqual([
    ['T-0001', 1, 40, 'closed'],
    ['T-0002', 2, 40, 'open'],
  ]);
  expect(series?.groups[0]?.result).toMatchObject({ testNumber: 'T-0001', seeds: 40, normal: 34, alive: 34 });
  expect(series?.soFar).toMatchObject({ seedsTested: 40, alive: 34, waiting: true, nextSeeds: null });
});

test('a group that was opened again no longer counts, until it is closed again with what it says by then', async () => {
  const { seriesId } = await setFirstGroup();
  await closeWith('T-0001', 38);
  expect((await findSeries(seriesId))?.soFar.decision).toMatchObject({ decision: 'keep' });
  await reopenTray(VOLUNTEER, { trayId: (await trayNumbered('T-0001')).id, reason: 'dish 2 was misread' });
  expect((await findSeries(seriesId))?.soFar).toMatchObject({ seedsTested: 0, waiting: true });
});

test('several are found at once, each with its own groups, in the order asked for', async () => {
  const one = await setFirstGroup();
  const two = await setFirstGroup({ lotNumber: 'L-2020-002' });
  await closeWith('T-0002', 36);
  const found = await findAllSeries([two.seriesId, 'no such series', one.seriesId]);
  expect(found.map(({ groups, soFar }) => [groups.map(({ number }) => number), soFar.seedsTested])).toEqual([
    [['T-0002'], 40],
    [['T-0001'], 0],
  ]);
  expect(await findAllSeries([])).toEqual([]);
});
