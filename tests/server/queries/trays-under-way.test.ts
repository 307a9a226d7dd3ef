import { beforeEach, describe, expect, it } from 'vitest';
import { connections } from '@/lib/server/database/connections';
import { countTraysWaiting, findTraysUnderWay, waitsToBeCounted } from '@/lib/server/queries/trays-under-way';
import { createLotWithPacket } from '@/tests/support/create-tested-lot';
import { createTray } from '@/tests/support/create-tray';
import { useTestBank } from '@/tests/support/test-bank';

const TODAY = '2026-11-25';
useTestBank({ fresh: 'each', today: TODAY });
beforeEach(() => createLotWithPacket());

const LOT = { lotNumber: 'L-2020-001' };
const one = (number: string) => findTraysUnderWay().find((tray) => tray.number === number);

describe('a tray under way', () => {
  it('waits for its first count, however late, until every dish with seed in it was counted', async () => {
    await createTray({ ...LOT, number: 'T-0301', counts: [{ on: '2026-11-24', dish: 1, found: { normal: 12 } }] });
    expect(one('T-0301')).toMatchObject({
      lastCountedOn: null,
      next: { on: '2026-11-23', final: false, daysLate: 2 },
      seeds: 100,
      remaining: 88,
      dishes: 2,
      toClose: false,
    });
  });

  it('waits for the next planned day once it was counted', async () => {
    const counts = [1, 2].map((dish) => ({ on: '2026-11-24', dish, found: { normal: 12 } }));
    await createTray({ ...LOT, number: 'T-0301', counts });
    expect(one('T-0301')).toMatchObject({ lastCountedOn: '2026-11-24', next: { on: '2026-12-02', final: true } });
  });

  it('waits to be closed when every seed is classed, and to be settled where counts disagree', async () => {
    const all = [1, 2].map((dish) => ({ on: '2026-11-24', dish, found: { normal: 45, dead: 5 } }));
    await createTray({ ...LOT, number: 'T-0301', counts: all });
    expect(one('T-0301')).toMatchObject({ toClose: true, disagreements: 0, remaining: 0 });
    await createTray({
      ...LOT,
      number: 'T-0302',
      counts: [...all, { on: '2026-11-24', dish: 2, found: { normal: 44, dead: 5 } }],
    });
    expect(one('T-0302')).toMatchObject({ toClose: false, disagreements: 1 });
    expect(countTraysWaiting()).toEqual({ toCount: 0, toClose: 1, disagreeing: 1 });
  });

  it('stands where it is walked along: by place, those without one last', async () => {
    await createTray({ ...LOT, number: 'T-0301' });
    await createTray({ ...LOT, number: 'T-0302', place: 'shelf 2' });
    await createTray({ ...LOT, number: 'T-0303', place: 'shelf 1' });
    expect(findTraysUnderWay().map(({ number }) => number)).toEqual(['T-0303', 'T-0302', 'T-0301']);
  });

  it('is gone once it is closed or given up', async () => {
    const { id } = await createTray({ ...LOT, number: 'T-0301' });
    connections().bulk.prepare(`UPDATE "Tray" SET "status" = 'given-up' WHERE "id" = ?`).run(id);
    expect(findTraysUnderWay()).toEqual([]);
  });
});

describe('what was worked out', () => {
  it('serves until something is written, and no longer', async () => {
    await createTray({ ...LOT, number: 'T-0301' });
    const first = findTraysUnderWay();
    expect(findTraysUnderWay()).toBe(first);
    await createTray({ ...LOT, number: 'T-0302' });
    expect(findTraysUnderWay().map(({ number }) => number)).toEqual(['T-0301', 'T-0302']);
  });

  it('does not outlive the day', async () => {
    await createTray({ ...LOT, number: 'T-0301' });
    expect(one('T-0301')?.next.daysLate).toBe(2);
    process.env.HILUM_TODAY = '2026-11-26';
    expect(one('T-0301')?.next.daysLate).toBe(3);
    process.env.HILUM_TODAY = TODAY;
  });
});

it('a tray is due on its day, not before', async () => {
  await createTray({ ...LOT, number: 'T-0301', firstCountOn: TODAY });
  const tray = one('T-0301');
  if (!tray) throw new Error('no tray');
  expect(waitsToBeCounted(tray, '2026-11-24')).toBe(false);
  expect(waitsToBeCounted(tray, TODAY)).toBe(true);
});

it('two hundred trays with twenty-four counts each are told in well under a second', async () => {
  for (let running = 1; running <= 200; running++) {
    const counts = Array.from({ length: 24 }, (_, index) => ({
      on: `2026-11-${19 + Math.floor(index / 4)}`,
      dish: (index % 4) + 1,
      found: { normal: 2 },
    }));
    await createTray({ ...LOT, number: `T-${1000 + running}`, dishes: [50, 50, 50, 50], counts, takesSeed: false });
  }
  const begun = performance.now();
  expect(findTraysUnderWay()).toHaveLength(200);
  expect(performance.now() - begun).toBeLessThan(700);
});
