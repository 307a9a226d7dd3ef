import fc from 'fast-check';
import { expect, it } from 'vitest';
import { addDays, toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { packetAgeing } from '@/lib/domain/longevity/packet-ageing';
import { movePacket } from '@/lib/server/commands/move-packet';
import { moveStore } from '@/lib/server/commands/move-store';
import { splitPacket } from '@/lib/server/commands/split-packet';
import { connections } from '@/lib/server/database/connections';
import { staysUntil } from '@/lib/server/judging/age-tests';
import { loadCropJudging } from '@/lib/server/judging/load-crop-judging';
import { loadLots, type PacketRecord } from '@/lib/server/judging/load-lots';
import { storeClimates } from '@/lib/server/judging/store-climates';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { logReadings } from '@/tests/support/log-readings';
import { VOLUNTEER } from '@/tests/support/people';
import { useTestBank } from '@/tests/support/test-bank';

const TODAY = '2026-11-25';
useTestBank({ fresh: 'each', today: TODAY });

const FIRST_DAY = '2022-01-10';
const DAYS_BETWEEN_MOVES = 90;

/** Three places of their own climates, two of them logged. */
async function threePlaces() {
  const places = [
    await makeStore({ kind: 'freezer', targetTemperatureC: '-18', targetHumidityPercent: '35' }),
    await makeStore({ targetTemperatureC: '5', targetHumidityPercent: '40' }),
    await makeStore({ kind: 'room', targetTemperatureC: '18', targetHumidityPercent: '45' }),
  ];
  for (const [index, store] of places.slice(1).entries()) {
    const start = toEpochDay('2022-02-01') * 86_400;
    logReadings(
      store.id,
      Array.from(
        { length: 900 },
        (_, day) => [start + day * 86_400, 6 + 9 * index + 3 * Math.sin(day / 20), 0.4] as const,
      ),
    );
  }
  return places;
}

/** Ageing of both packets at many days, and where their climate came from. */
function whatTheyWentThrough(packetIds: string[], lotId: string) {
  const { rows } = connections();
  const climates = storeClimates(rows);
  const [lot] = loadLots(rows, [lotId]);
  const seed = loadCropJudging(rows, 'all').get(lot?.cropId ?? '')?.seed;
  if (!lot || !seed) throw new Error('the lot is not there');
  return packetIds.map((id) => {
    const stays = staysUntil(lot.packets.find((packet) => packet.id === id) as PacketRecord, climates, TODAY);
    const ageing = packetAgeing(stays, climates.climateOf, seed);
    if (!ageing.ok) throw new Error(ageing.reason);
    const days = Array.from({ length: 180 }, (_, index) => toEpochDay(FIRST_DAY) + index * 11);
    return {
      probits: days.map((day) => ageing.probitsAt(day)),
      ratePerDay: ageing.ratePerDay,
      climates: stays
        .filter(({ days: length }) => length > 0)
        .map(({ from, climateId }) => ({ from, ...climates.sourceOf(climateId), fromDay: null, toDay: null })),
    };
  });
}

const journey = fc.record({
  container: fc.constantFrom('glass-jar', 'paper-envelope'),
  /** the place it goes to each time, as steps from where it is */
  steps: fc.array(fc.record({ step: fc.constantFrom(1, 2), days: fc.nat(DAYS_BETWEEN_MOVES - 1) }), {
    minLength: 1,
    maxLength: 8,
  }),
});

it('gives packets in a box that is moved the history of packets that are moved one by one', async () => {
  const places = await threePlaces();
  let travelled = 0;
  await fc.assert(
    fc.asyncProperty(journey, async ({ container, steps }) => {
      travelled += 1;
      const at = (index: number) => places[index % places.length]?.id as string;
      const box = await makeStore({
        name: `Box ${travelled}`,
        kind: 'box',
        parentId: at(0),
        inheritsTarget: 'on',
        targetTemperatureC: '',
      });
      const boxed = await makeLot({
        ...{ storeId: box.id, harvestedOn: '2021-09-01', storedOn: FIRST_DAY, container, moisturePercent: '7' },
        seedCount: '1000',
      });
      const single = await splitPacket(VOLUNTEER, {
        ...{ packetId: boxed.packetId, amount: '500', unit: 'seeds', role: 'active' },
        ...{
          storeId: at(0),
          from: FIRST_DAY,
          container,
          moisturePercent: '7',
          sealed: container === 'glass-jar' ? 'on' : '',
        },
      });
      let place = 0;
      for (const [index, { step, days }] of steps.entries()) {
        place += step;
        const from = addDays(FIRST_DAY, 30 + index * DAYS_BETWEEN_MOVES + days);
        const { version } = connections()
          .rows.prepare<[string], { version: number }>(`SELECT "version" FROM "Store" WHERE "id" = ?`)
          .get(box.id) as { version: number };
        await moveStore(VOLUNTEER, { id: box.id, version, parentId: at(place), from });
        await movePacket(VOLUNTEER, { packetId: single.packetId, storeId: at(place), from });
      }
      const [inBox, byItself] = whatTheyWentThrough([boxed.packetId, single.packetId], boxed.lotId);
      expect(inBox?.climates).toEqual(byItself?.climates);
      expect(inBox?.ratePerDay).toBe(byItself?.ratePerDay);
      inBox?.probits.forEach((probits, index) => {
        const other = byItself?.probits[index] as number;
        expect(Math.abs(probits - other)).toBeLessThanOrEqual(1e-12 * Math.max(1, other));
      });
      expect(inBox?.probits.at(-1)).toBeGreaterThan(0);
    }),
    { numRuns: 12, seed: 20_261_130 },
  );
}, 120_000);
