import { beforeEach, describe, expect, it } from 'vitest';
import type { RunningBench } from '@/app/bench/_store/create-bench';
import { NOTHING_FOUND } from '@/lib/domain/germination/bench/tray-count';
import { reader } from '@/lib/server/database/connections';
import { type SimulatedDevice, simulatedDevice } from '@/tests/support/bench/simulated-device';
import { createTray } from '@/tests/support/create-tray';
import { VOLUNTEER } from '@/tests/support/people';
import { useTestBank } from '@/tests/support/test-bank';

const TODAY = '2026-11-25';

useTestBank({ today: TODAY, fresh: 'each' });

let phone: SimulatedDevice;
let bench: RunningBench;
let tray: Awaited<ReturnType<typeof createTray>>;

beforeEach(async () => {
  tray = await createTray();
  phone = await simulatedDevice({
    person: VOLUNTEER,
    now: () => Date.parse(`${TODAY}T09:00:00Z`),
    localDay: () => TODAY,
  });
  bench = phone.tabs[0] as RunningBench;
  await bench.synchronise();
});

function enter(normal: number, more: { dish?: number; goesOn?: boolean } = {}): void {
  const dishId = tray.dishes[more.dish ?? 0]?.id ?? '';
  const found = { ...NOTHING_FOUND, normal };
  bench.enter({ trayId: tray.id, dishId, on: TODAY, found, goesOn: more.goesOn ?? false });
}
const shown = (dish = 0): number | null =>
  bench.view().trays[0]?.dishes[dish]?.days.find(({ on }) => on === TODAY)?.found?.normal ?? null;
const held = () => reader().trayCount.findMany({ orderBy: { id: 'asc' } });

describe('taking back', () => {
  it('a number of several digits is taken back as one', () => {
    enter(3);
    enter(1);
    enter(15, { goesOn: true });
    bench.undo();
    expect(shown()).toBe(3);
    bench.undo();
    expect(shown()).toBeNull();
    expect(bench.view().canUndo).toBe(false);
  });

  it('it is one thing to take back also when its first digit was sent before the second was typed', async () => {
    enter(1);
    await bench.synchronise();
    enter(15, { goesOn: true });
    bench.undo();
    expect(shown()).toBeNull();
    await bench.synchronise();
    expect((await held()).map(({ normal, counted }) => [normal, counted])).toEqual([
      [1, true],
      [0, false],
    ]);
  });

  it('a digit does not go on with an entry of another dish', () => {
    enter(4);
    enter(7, { dish: 1, goesOn: true });
    bench.undo();
    expect([shown(0), shown(1)]).toEqual([4, null]);
  });

  it('what was entered together is taken back together', () => {
    bench.together(() => {
      enter(0);
      enter(0, { dish: 1 });
    });
    bench.undo();
    expect([shown(0), shown(1)]).toEqual([null, null]);
  });
});

describe('entries that wait', () => {
  it('a count that was written over before it was sent is not sent at all', async () => {
    enter(2);
    enter(9);
    expect(bench.view().waiting).toBe(1);
    await bench.synchronise();
    expect((await held()).map(({ normal }) => normal)).toEqual([9]);
  });

  it('one that was sent is replaced by name', async () => {
    enter(2);
    await bench.synchronise();
    enter(9);
    await bench.synchronise();
    const [first, second] = await held();
    expect(second?.normal).toBe(9);
    expect(JSON.parse(second?.replaces ?? '')).toEqual([first?.id]);
  });

  it('one whose answer was lost is sent again as it was, and kept once', async () => {
    enter(2);
    phone.line.answersToLose = 1;
    await bench.synchronise();
    expect(bench.view()).toMatchObject({ waiting: 1, link: 'no-answer' });
    await bench.synchronise();
    expect(bench.view()).toMatchObject({ waiting: 0, link: 'online' });
    expect(await held()).toHaveLength(1);
  });

  it('they outlive the page and the session', async () => {
    phone.line.cut = true;
    enter(6);
    await phone.reload(0);
    bench = phone.tabs[0] as RunningBench;
    expect([shown(), bench.view().waiting]).toEqual([6, 1]);
    phone.line.cut = false;
    phone.line.person = null;
    await bench.synchronise();
    expect(bench.view()).toMatchObject({ waiting: 1, link: 'sign-in-needed' });
    phone.line.person = VOLUNTEER;
    await bench.synchronise();
    expect((await held()).map(({ normal }) => normal)).toEqual([6]);
  });
});

describe('what an entry replaces', () => {
  it('is also the one before it, when another tab was sending that in the same moment', async () => {
    phone = await simulatedDevice({
      person: VOLUNTEER,
      now: () => Date.parse(`${TODAY}T09:00:00Z`),
      localDay: () => TODAY,
      tabs: 2,
    });
    const [one, other] = phone.tabs as [RunningBench, RunningBench];
    bench = one;
    await one.synchronise();
    await other.lookAgain();
    enter(4);
    await other.lookAgain();
    // This tab has not heard yet that the other one has picked it.
    phone.line.meanwhile = () => enter(6);
    await other.synchronise();
    await one.synchronise();
    const [first, second] = await held();
    expect([first?.normal, second?.normal]).toEqual([4, 6]);
    expect(JSON.parse(second?.replaces ?? '')).toEqual([first?.id]);
  });

  it('is every count that disagreed: then nobody is asked any more', async () => {
    const second = await simulatedDevice({
      person: VOLUNTEER,
      now: () => Date.parse(`${TODAY}T09:30:00Z`),
      localDay: () => TODAY,
    });
    const other = second.tabs[0] as RunningBench;
    await other.synchronise();
    enter(4);
    other.enter({
      trayId: tray.id,
      dishId: tray.dishes[0]?.id ?? '',
      on: TODAY,
      found: { ...NOTHING_FOUND, normal: 9 },
    });
    await other.synchronise();
    await bench.synchronise();
    expect(bench.view().trays[0]?.dishes[0]?.disagreements).toHaveLength(1);
    enter(13);
    await bench.synchronise();
    await other.synchronise();
    for (const phoneNow of [bench, other]) {
      expect(phoneNow.view().trays[0]?.dishes[0]?.disagreements).toEqual([]);
      expect(phoneNow.view().trays[0]?.dishes[0]?.totals.normal).toBe(13);
    }
    expect(await held()).toHaveLength(3);
  });
});
