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

function enter(normal: number, dish = 0): void {
  const found = { ...NOTHING_FOUND, normal };
  bench.enter({ trayId: tray.id, dishId: tray.dishes[dish]?.id ?? '', on: TODAY, found });
}
const shown = (dish = 0): number | null =>
  bench.view().trays[0]?.dishes[dish]?.days.find(({ on }) => on === TODAY)?.found?.normal ?? null;
const held = async () =>
  (await reader().trayCount.findMany({ orderBy: { id: 'asc' } })).map(({ normal, replaces }) => [
    normal,
    (JSON.parse(replaces) as string[]).length,
  ]);
const reopened = async () => {
  await phone.reload(0);
  bench = phone.tabs[0] as RunningBench;
};
/** Lets what is on its way to the memory arrive. */
const written = () => new Promise((done) => setTimeout(done));
const photo = () => bench.addPhoto({ trayId: tray.id, dish: 1, on: TODAY, picture: new Blob(['dish']) });

describe('a phone without room', () => {
  it('says so with the first count that it cannot keep, and goes on with it', async () => {
    expect(bench.view().notKept).toBeNull();
    phone.room.full = true;
    enter(4);
    await written();
    expect(bench.view().notKept).toEqual({ what: 'everything', noRoom: true });
    enter(3, 1);
    expect([shown(0), shown(1), bench.view().waiting]).toEqual([4, 3, 2]);
  });

  it('sends what this page holds as soon as the server is reached', async () => {
    phone.room.full = true;
    phone.line.cut = true;
    enter(4);
    enter(3, 1);
    await bench.synchronise();
    expect(bench.view().waiting).toBe(2);
    phone.line.cut = false;
    await bench.synchronise();
    expect(bench.view()).toMatchObject({ waiting: 0, link: 'online' });
    expect(await held()).toEqual([
      [4, 0],
      [3, 0],
    ]);
  });

  it('takes everything over once there is room, and says nothing more', async () => {
    phone.line.cut = true;
    enter(4);
    await written();
    phone.room.full = true;
    enter(6);
    enter(3, 1);
    await bench.synchronise();
    expect(bench.view().notKept?.what).toBe('everything');
    phone.room.full = false;
    await bench.synchronise();
    expect(bench.view().notKept).toBeNull();
    await reopened();
    expect([shown(0), shown(1), bench.view().waiting]).toEqual([6, 3, 2]);
    phone.line.cut = false;
    await bench.synchronise();
    expect(await held()).toEqual([
      [6, 0],
      [3, 0],
    ]);
  });

  it('does not find a count waiting again that was written over and sent while there was no room', async () => {
    phone.line.cut = true;
    enter(4);
    await written();
    phone.room.full = true;
    enter(6);
    await written();
    phone.line.cut = false;
    await bench.synchronise();
    await bench.synchronise();
    expect(await held()).toEqual([[6, 0]]);
    phone.room.full = false;
    await reopened();
    expect(bench.view().waiting).toBe(0);
    await bench.synchronise();
    expect(await held()).toEqual([[6, 0]]);
    expect(bench.view().trays[0]?.dishes[0]?.disagreements).toEqual([]);
  });

  it('keeps counts on the phone when only a photograph does not fit, and keeps that too once it does', async () => {
    phone.line.cut = true;
    phone.room.fullForPhotos = true;
    await photo();
    enter(4);
    await written();
    expect(bench.view()).toMatchObject({ notKept: { what: 'photos', noRoom: true }, waiting: 2 });
    // Another tab's change makes this one read the memory, which does not have the photograph.
    await bench.lookAgain();
    expect(bench.view().waiting).toBe(2);
    expect((await phone.memory.load()).waiting).toHaveLength(1);
    phone.room.fullForPhotos = false;
    await bench.synchronise();
    expect(bench.view().notKept).toBeNull();
    await reopened();
    expect(bench.view().waiting).toBe(2);
  });

  it('sends a photograph that it could not keep, and then has nothing to say of it', async () => {
    phone.line.takesPhotos = true;
    phone.room.fullForPhotos = true;
    await photo();
    expect(bench.view().trays[0]?.photosWaiting).toHaveLength(1);
    await bench.synchronise();
    expect(bench.view()).toMatchObject({ notKept: null, waiting: 0 });
    expect(bench.view().trays[0]?.photosWaiting).toEqual([]);
  });
});
