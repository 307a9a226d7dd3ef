import { expect, test } from 'vitest';
import { closeTray } from '@/lib/server/commands/close-tray';
import { reopenTray } from '@/lib/server/commands/reopen-tray';
import { connections } from '@/lib/server/database/connections';
import { getTrayPage } from '@/lib/server/queries/tray-page';
import { createTray } from '../../support/create-tray';
import { VOLUNTEER } from '../../support/people';
import { useTestBank } from '../../support/test-bank';

useTestBank({ fresh: 'each' });

const COUNTED = [
  { on: '2026-11-23', dish: 1, found: { normal: 30 } },
  { on: '2026-11-23', dish: 2, found: { normal: 28 } },
  { on: '2026-11-24', dish: 1, found: { normal: 11, dead: 9 } },
  { on: '2026-11-24', dish: 2, found: { normal: 13, dead: 9 } },
];

/** As a phone sends it that had been out of reach: made before the tray was closed, and received by a clock that is slow. */
const sendLate = (tray: Awaited<ReturnType<typeof createTray>>, normal: number) =>
  connections().writer.trayCount.create({
    data: {
      ...{ id: '019a0000-0000-7000-8000-0000000000ff', trayId: tray.id, dishId: `${tray.id}-dish-2`, on: '2026-11-24' },
      ...{
        normal,
        dead: 22 - normal,
        deviceId: 'phone',
        madeAt: new Date('2026-11-24T09:00:00Z'),
        byId: 'v',
        byName: 'Rory',
      },
      receivedAt: new Date('2026-11-24T09:00:00Z'),
    },
  });

test('a tray under way has its plan, its dishes, what is missing, and its curve so far', async () => {
  const tray = await createTray({ counts: COUNTED.slice(0, 3) });
  const page = await getTrayPage(tray.number);
  expect(page).toMatchObject({ status: 'open', test: null, late: [], method: '20 °C' });
  expect(page?.plan.map(({ on, state }) => [on, state])).toEqual([
    ['2026-11-23', 'made'],
    ['2026-12-02', 'coming'],
  ]);
  expect(page?.unready).toEqual([{ reason: 'not-classed', position: 2, remaining: 22 }]);
  expect(page?.course.ok && page.course.course.curve.final.day).toBe(6);
  expect(await getTrayPage('T-9999')).toBeNull();
});

test('a count that comes after closing is late whatever its clock says; reopened and closed again it is in the test', async () => {
  const tray = await createTray({ counts: COUNTED });
  await closeTray(VOLUNTEER, { trayId: tray.id });
  expect((await getTrayPage(tray.number))?.late).toEqual([]);
  await sendLate(tray, 14);
  const page = await getTrayPage(tray.number);
  expect(page?.late).toMatchObject([{ byName: 'Rory', found: { normal: 14 } }]);
  expect(page?.unready).toEqual([{ reason: 'disagreement', position: 2, on: '2026-11-24' }]);

  await reopenTray(VOLUNTEER, { trayId: tray.id, reason: 'a late count' });
  const open = await getTrayPage(tray.number);
  expect(open).toMatchObject({ status: 'open', late: [], test: { number: tray.number } });
  await expect(closeTray(VOLUNTEER, { trayId: tray.id })).rejects.toMatchObject({ code: 'refused' });
});

test('a late count that says the same changes nothing, and closing again writes nothing', async () => {
  const tray = await createTray({ counts: COUNTED });
  await closeTray(VOLUNTEER, { trayId: tray.id });
  await sendLate(tray, 13);
  expect((await getTrayPage(tray.number))?.late).toHaveLength(1);
  await reopenTray(VOLUNTEER, { trayId: tray.id, reason: 'a late count' });
  expect(await closeTray(VOLUNTEER, { trayId: tray.id })).toEqual({ number: tray.number });
  expect((await getTrayPage(tray.number))?.late).toEqual([]);
});
