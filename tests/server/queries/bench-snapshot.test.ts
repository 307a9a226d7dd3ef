import { describe, expect, it } from 'vitest';
import { addDays } from '@/lib/domain/calendar/calendar-date';
import { NOTHING_FOUND } from '@/lib/domain/germination/bench/tray-count';
import { addBenchEntries } from '@/lib/server/commands/add-bench-entries';
import { connections } from '@/lib/server/database/connections';
import { newId } from '@/lib/server/new-id';
import { getBenchSnapshot } from '@/lib/server/queries/bench-snapshot';
import { createLotWithPacket } from '@/tests/support/create-tested-lot';
import { createTray } from '@/tests/support/create-tray';
import { insertTray } from '@/tests/support/insert-tray';
import { STEWARD, VOLUNTEER } from '@/tests/support/people';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

describe('what the bench reads', () => {
  it('is every open tray with its dishes, counts and notes, and what to know of its seed', async () => {
    await createLotWithPacket({ number: 'L-2020-007', crop: 'Leek', treatment: 'a fungicide' });
    const tray = await createTray({
      ...{ lotNumber: 'L-2020-007', place: 'incubator 1, shelf 2', dishes: [50, 25], countEveryDays: 2 },
      counts: [{ on: '2026-11-23', dish: 1, found: { normal: 12, dead: 1 } }],
    });
    const closed = await createTray({ lotNumber: 'L-2020-007', takesSeed: false });
    connections().bulk.prepare(`UPDATE "Tray" SET "status" = 'closed' WHERE "id" = ?`).run(closed.id);
    const places = { abnormal: [7] };
    const count = { kind: 'count', id: newId(), trayId: tray.id, dishId: tray.dishes[1]?.id, on: '2026-11-25' };
    const made = { madeAt: '2026-11-25T08:00:00.000Z', countedBy: 'Wren' };
    const note = { kind: 'note', id: newId(), trayId: tray.id, dish: null, on: '2026-11-25', text: 'dry' };
    const found = { ...NOTHING_FOUND, abnormal: 1 };
    const entries = [
      { ...count, found, places, replaces: [], ...made },
      { ...note, madeAt: made.madeAt },
    ];
    await addBenchEntries(STEWARD, { deviceId: 'phone-by-the-door', entries });

    const snapshot = getBenchSnapshot(VOLUNTEER);
    expect(snapshot).toMatchObject({
      ...{ today: '2026-11-25', todayIsFixed: true, person: { id: VOLUNTEER.id, name: VOLUNTEER.name } },
      trays: [
        {
          ...{ id: tray.id, number: tray.number, lotNumber: 'L-2020-007', cropName: 'Leek', treatment: 'a fungicide' },
          ...{
            place: 'incubator 1, shelf 2',
            setOn: '2026-11-18',
            countEveryDays: 2,
            light: false,
            hardSeedOccurs: false,
          },
          dishes: [
            { position: 1, seeds: 50 },
            { position: 2, seeds: 25 },
          ],
          counts: [
            {
              on: '2026-11-23',
              found: { ...NOTHING_FOUND, normal: 12, dead: 1 },
              replaces: [],
              places: null,
              byName: 'Moss',
            },
            {
              ...{ id: count.id, dishId: count.dishId, on: count.on },
              found,
              places,
              byName: 'Wren',
              deviceId: 'phone-by-the-door',
            },
          ],
          notes: [{ id: note.id, dish: null, kind: 'note', text: 'dry', byName: STEWARD.name }],
        },
      ],
    });
    expect(snapshot.trays).toHaveLength(1);
    expect(JSON.parse(JSON.stringify(snapshot))).toEqual(snapshot);
  });

  it('gives a count that was taken back as such', async () => {
    const tray = await createTray();
    const count = { kind: 'count', id: newId(), trayId: tray.id, dishId: tray.dishes[0]?.id, on: '2026-11-25' };
    const entry = {
      ...count,
      found: null,
      places: null,
      replaces: [],
      madeAt: '2026-11-25T08:00:00Z',
      countedBy: null,
    };
    await addBenchEntries(VOLUNTEER, { deviceId: 'phone-by-the-door', entries: [entry] });
    expect(getBenchSnapshot(VOLUNTEER).trays[0]?.counts[0]?.found).toBeNull();
  });

  it('of 200 trays with 4000 counts is read in well under a second', async () => {
    await createLotWithPacket();
    const days = [0, 2, 4, 6, 8].map((day) => addDays('2026-11-10', day));
    const counts = days.flatMap((on) => [1, 2, 3, 4].map((dish) => ({ on, dish, found: { normal: 5 } })));
    const dates = { setOn: '2026-11-05', firstCountOn: '2026-11-10', finalCountOn: '2026-11-26', takesSeed: false };
    for (let number = 1; number <= 200; number += 1) {
      const named = { number: `T-${5000 + number}`, lotNumber: 'L-2020-001' };
      insertTray(connections().bulk, { ...dates, ...named, dishes: [50, 50, 50, 50], counts });
    }
    getBenchSnapshot(VOLUNTEER);
    const began = performance.now();
    const body = JSON.stringify(getBenchSnapshot(VOLUNTEER));
    const milliseconds = performance.now() - began;
    const { gzipSync } = await import('node:zlib');
    console.info(
      `bench-snapshot ${JSON.stringify({ milliseconds, bytes: body.length, compressed: gzipSync(body).length })}`,
    );
    expect(JSON.parse(body).trays.flatMap((tray: { counts: unknown[] }) => tray.counts)).toHaveLength(4000);
    expect(milliseconds).toBeLessThan(1_000);
  });
});
