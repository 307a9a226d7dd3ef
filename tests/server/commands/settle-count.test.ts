import { expect, test } from 'vitest';
import { dishStates } from '@/lib/domain/germination/bench/dish-state';
import { settleCount } from '@/lib/server/commands/settle-count';
import { connections, reader } from '@/lib/server/database/connections';
import { selectCount, writtenCount } from '@/lib/server/trays/count-row';
import { createTray } from '../../support/create-tray';
import { VOLUNTEER } from '../../support/people';
import { refusal } from '../../support/refusal';
import { useTestBank } from '../../support/test-bank';

useTestBank({ fresh: 'each' });

const ON = '2026-11-23';

async function disagreeing(before = 0) {
  const tray = await createTray({
    counts: [
      ...(before > 0 ? [{ on: '2026-11-21', dish: 1, found: { normal: before } }] : []),
      { on: ON, dish: 1, found: { normal: 10 } },
      { on: ON, dish: 1, found: { normal: 12, dead: 1 } },
    ],
  });
  const counts = await countsOf(tray.id);
  const standing = counts.filter(({ on }) => on === ON).map(({ id }) => id);
  return {
    tray,
    standing,
    input: { trayId: tray.id, dishId: `${tray.id}-dish-1`, on: ON, version: standing.join(' ') },
  };
}

const countsOf = async (trayId: string) =>
  (await reader().trayCount.findMany({ where: { trayId }, select: selectCount, orderBy: { id: 'asc' } })).map(
    writtenCount,
  );
const dish1 = async (tray: Awaited<ReturnType<typeof createTray>>) =>
  dishStates(tray.dishes, await countsOf(tray.id))[0];

test('one of two counts can be said to hold: a further count replaces both, and nothing is deleted', async () => {
  const { tray, standing, input } = await disagreeing();
  await settleCount(VOLUNTEER, { ...input, settle: `one ${standing[0]}` });
  expect(await dish1(tray)).toMatchObject({ totals: { normal: 10, dead: 0 }, disagreements: [] });
  const counts = await countsOf(tray.id);
  expect(counts).toHaveLength(3);
  expect([...(counts[2]?.replaces ?? [])].sort()).toEqual([...standing].sort());
  const [audit] = await reader().auditEntry.findMany({ where: { entity: 'tray' } });
  expect(audit?.summary).toBe(
    `Settled dish 1 of ${tray.number} on ${ON}: 10 normal (Moss 10 normal; Moss 12 normal, 1 dead)`,
  );
});

test('both hold when they were made one after the other', async () => {
  const { tray, input } = await disagreeing();
  await settleCount(VOLUNTEER, { ...input, settle: 'both' });
  expect((await dish1(tray))?.totals).toMatchObject({ normal: 22, dead: 1 });
});

test('neither may hold, but another', async () => {
  const { tray, input } = await disagreeing();
  expect(
    (await refusal(settleCount(VOLUNTEER, { ...input, settle: 'other', other: { normal: '' } }))).fieldErrors,
  ).toEqual({
    'other.normal': 'Write what was found, 0 if nothing was.',
  });
  await settleCount(VOLUNTEER, { ...input, settle: 'other', other: { normal: '11', dead: '' } });
  expect((await dish1(tray))?.totals).toMatchObject({ normal: 11, dead: 0 });
});

test('both cannot hold where that is more seed than was set', async () => {
  const { input } = await disagreeing(30);
  const refused = await refusal(settleCount(VOLUNTEER, { ...input, settle: 'both' }));
  expect(refused.fieldErrors.settle).toBe('That is 23 seeds, and only 20 of 50 are left for this day.');
});

test('is refused where a further count has come, or it was settled already; a choice is needed', async () => {
  const { tray, standing, input } = await disagreeing();
  expect((await refusal(settleCount(VOLUNTEER, input))).fieldErrors.settle).toMatch(/Choose/);
  expect((await refusal(settleCount(VOLUNTEER, { ...input, settle: 'one nothing' }))).fieldErrors.settle).toMatch(
    /Choose/,
  );
  await connections().writer.trayCount.create({
    data: {
      ...{ id: '019a0000-0000-7000-8000-00000000ffff', trayId: tray.id, dishId: input.dishId, on: ON, normal: 9 },
      ...{ deviceId: 'phone', madeAt: new Date(), byId: 'v', byName: 'Rory' },
    },
  });
  const stale = await refusal(settleCount(VOLUNTEER, { ...input, settle: 'both' }));
  expect(stale.code).toBe('conflict');
  const now = { ...input, version: [...standing, '019a0000-0000-7000-8000-00000000ffff'].sort().join(' ') };
  await settleCount(VOLUNTEER, { ...now, settle: `one ${standing[0]}` });
  expect((await refusal(settleCount(VOLUNTEER, { ...now, settle: 'both' }))).code).toBe('conflict');
});
