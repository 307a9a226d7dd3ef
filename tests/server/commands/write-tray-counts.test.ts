import { describe, expect, test } from 'vitest';
import { dishStates } from '@/lib/domain/germination/bench/dish-state';
import { closeTray } from '@/lib/server/commands/close-tray';
import { StaleVersion } from '@/lib/server/commands/stale-version';
import { writeTrayCounts } from '@/lib/server/commands/write-tray-counts';
import { reader } from '@/lib/server/database/connections';
import { selectCount, writtenCount } from '@/lib/server/trays/count-row';
import { createTray } from '../../support/create-tray';
import { VISITOR, VOLUNTEER } from '../../support/people';
import { refusal } from '../../support/refusal';
import { useTestBank } from '../../support/test-bank';

useTestBank({ fresh: 'each' });

type Tray = Awaited<ReturnType<typeof createTray>>;
type Row = Record<string, string>;
/** Rows by position of the dish. */
const rowsOf = (tray: Tray, rows: Record<number, Row>) =>
  Object.fromEntries(Object.entries(rows).map(([position, row]) => [`${tray.id}-dish-${position}`, row]));
const write = (tray: Tray, rows: Record<number, Row>, more: Record<string, unknown> = {}) =>
  writeTrayCounts(VOLUNTEER, { trayId: tray.id, on: '2026-11-23', version: '', dishes: rowsOf(tray, rows), ...more });
const countsOf = async (tray: Tray) =>
  (await reader().trayCount.findMany({ where: { trayId: tray.id }, select: selectCount, orderBy: { id: 'asc' } })).map(
    writtenCount,
  );
const standing = async (tray: Tray) =>
  dishStates(tray.dishes, await countsOf(tray)).map(({ days, totals }) => ({
    normal: totals.normal,
    dead: totals.dead,
    days: days.length,
    standing: days.map((day) => day.standing.length),
  }));
const field = (tray: Tray, position: number) => `dishes.${tray.id}-dish-${position}.normal`;

describe('a day’s counts written on a page', () => {
  test('are kept for each dish that was filled in; blank boxes of a filled row are none', async () => {
    const tray = await createTray();
    await write(tray, { 1: { normal: '12', dead: '' }, 2: { normal: '', dead: '' } }, { countedBy: 'Rory' });
    const counts = await countsOf(tray);
    expect(counts).toHaveLength(1);
    expect(counts[0]).toMatchObject({ on: '2026-11-23', byName: 'Rory', found: { normal: 12, dead: 0 }, replaces: [] });
  });

  test('replace what stood as the form saw it; a row left as it was is not written again', async () => {
    const tray = await createTray({
      counts: [
        { on: '2026-11-23', dish: 1, found: { normal: 10 } },
        { on: '2026-11-23', dish: 2, found: { normal: 20 } },
      ],
    });
    const [first, second] = await countsOf(tray);
    const version = [first?.id, second?.id].sort().join(' ');
    expect(await write(tray, { 1: { normal: '11' }, 2: { normal: '20' } }, { version })).toMatchObject({ dishes: 1 });
    const counts = await countsOf(tray);
    expect(counts.map(({ replaces }) => replaces)).toEqual([[], [], [first?.id]]);
    expect(await standing(tray)).toMatchObject([
      { normal: 11, standing: [1] },
      { normal: 20, standing: [1] },
    ]);
  });

  test('that somebody wrote meanwhile are shown, not overwritten; sent again with them in sight it counts', async () => {
    const tray = await createTray({ counts: [{ on: '2026-11-23', dish: 2, found: { normal: 14, dead: 1 } }] });
    const stale = await refusal(write(tray, { 1: { normal: '9' }, 2: { normal: '15' } }));
    expect(stale).toBeInstanceOf(StaleVersion);
    expect(stale.userMessage).toContain('Dish 2: Moss wrote 14 normal, 1 dead.');
    expect(await countsOf(tray)).toHaveLength(1);
    const version = (stale as StaleVersion<string>).currentVersion;
    await write(tray, { 1: { normal: '9' }, 2: { normal: '15' } }, { version });
    expect(await standing(tray)).toMatchObject([{ normal: 9 }, { normal: 15, dead: 0, standing: [1] }]);
  });

  test('can be taken back: a row emptied again', async () => {
    const tray = await createTray({ counts: [{ on: '2026-11-23', dish: 1, found: { normal: 10 } }] });
    const [first] = await countsOf(tray);
    await write(tray, { 1: { normal: '', dead: '' } }, { version: first?.id });
    expect(await standing(tray)).toMatchObject([{ normal: 0, days: 0 }, { days: 0 }]);
  });

  test('settle a disagreement when written over it', async () => {
    const tray = await createTray({
      counts: [
        { on: '2026-11-23', dish: 1, found: { normal: 10 } },
        { on: '2026-11-23', dish: 1, found: { normal: 12 } },
      ],
    });
    const version = (await countsOf(tray)).map(({ id }) => id).join(' ');
    await write(tray, { 1: { normal: '12' } }, { version });
    expect(await standing(tray)).toMatchObject([{ normal: 12, standing: [1] }, {}]);
  });

  test('never come to more than was set, counting other days: as many may, one more may not', async () => {
    const tray = await createTray({ counts: [{ on: '2026-11-21', dish: 1, found: { normal: 40 } }] });
    const refused = await refusal(write(tray, { 1: { normal: '11' } }));
    expect(refused.fieldErrors[field(tray, 1)]).toMatch(/40 were found on other days: at most 10 .* not 11/);
    await write(tray, { 1: { normal: '10' } });
    expect(await standing(tray)).toMatchObject([{ normal: 50 }, {}]);
  });

  test('on the last day, what is left can be counted as dead in one tick', async () => {
    const tray = await createTray({
      counts: [
        { on: '2026-11-21', dish: 1, found: { normal: 40 } },
        { on: '2026-11-21', dish: 2, found: { normal: 50 } },
      ],
    });
    await write(tray, { 1: { normal: '3' } }, { restDead: 'on' });
    expect(await standing(tray)).toMatchObject([
      { normal: 43, dead: 7 },
      { normal: 50, dead: 0, days: 1 },
    ]);
  });

  test('belong to a day from setting to today, and no seedling came up on the day of setting', async () => {
    const tray = await createTray();
    expect((await refusal(write(tray, { 1: { normal: '1' } }, { on: '2026-11-17' }))).fieldErrors.on).toContain(
      '2026-11-18',
    );
    expect((await refusal(write(tray, { 1: { normal: '1' } }, { on: '2026-11-26' }))).fieldErrors.on).toBeDefined();
    const early = await refusal(write(tray, { 1: { normal: '1' } }, { on: '2026-11-18' }));
    expect(early.fieldErrors[field(tray, 1)]).toMatch(/when it was set/);
    await write(tray, { 1: { dead: '1' } }, { on: '2026-11-18' });
  });

  test('are refused without a change, for visitors, and once the tray is closed', async () => {
    const tray = await createTray();
    expect((await refusal(write(tray, {}))).userMessage).toMatch(/Nothing was changed/);
    expect((await refusal(writeTrayCounts(VISITOR, { trayId: tray.id }))).code).toBe('not-allowed');
    await write(tray, { 1: { normal: '45', dead: '5' }, 2: { normal: '40', dead: '10' } });
    await closeTray(VOLUNTEER, { trayId: tray.id });
    expect((await refusal(write(tray, { 1: { normal: '44' } }))).userMessage).toMatch(/closed by now/);
  });

  test('sent as the tray is being closed are in the test or refused, never half', async () => {
    const outcomes = new Set<string>();
    for (let round = 0; round < 6; round += 1) {
      const tray = await createTray({
        ...(round === 0 ? {} : { lotNumber: 'L-2020-001' }),
        counts: [
          { on: '2026-11-23', dish: 1, found: { normal: 45, dead: 5 } },
          { on: '2026-11-23', dish: 2, found: { normal: 40, dead: 10 } },
        ],
      });
      const version = (await countsOf(tray)).map(({ id }) => id).join(' ');
      const correct = () =>
        write(tray, { 1: { normal: '44', dead: '6' }, 2: { normal: '39', dead: '11' } }, { version });
      const close = () => closeTray(VOLUNTEER, { trayId: tray.id });
      const [first, second] = round % 2 === 0 ? [correct, close] : [close, correct];
      const done = await Promise.allSettled([first(), second()]);
      const replicates = await reader().replicate.findMany({
        where: { test: { trayId: tray.id } },
        orderBy: { position: 'asc' },
      });
      const normal = replicates.map((replicate) => replicate.normal).join();
      const written = done.every(({ status }) => status === 'fulfilled');
      expect(normal).toBe(written ? '44,39' : '45,40');
      outcomes.add(normal);
    }
    expect([...outcomes].sort()).toEqual(['44,39', '45,40']);
  });
});
