import { beforeEach, describe, expect, it } from 'vitest';
import { addDays, toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { connections } from '@/lib/server/database/connections';
import { getStoreClimate } from '@/lib/server/queries/store-climate';
import { getStoreClimateCost } from '@/lib/server/queries/store-climate-cost';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { createLotWithPacket } from '@/tests/support/create-tested-lot';
import { logReadings } from '@/tests/support/log-readings';
import { useTestBank } from '@/tests/support/test-bank';

const TODAY = '2026-11-25';
useTestBank({ fresh: 'each', today: TODAY });

const HOUR = 3600;
const BROKE = '2026-07-03';
const MENDED = '2026-07-10';
/** Leek: the temperature half of the equation, as in the reference facts. */
const timesFaster = ({ CH, CQ }: { CH: number; CQ: number }, t: number) => 10 ** (CH * (t - 4) + CQ * (t * t - 16));

let fridge: { id: string; name: string };
let leek: { CH: number; CQ: number };

/** A fridge at 4 °C, logged hourly from June to the day before yesterday, that stood at 22 °C from 3 to 9 July. */
beforeEach(async () => {
  fridge = await makeStore({ name: 'Fridge A', targetHumidityPercent: '40' });
  const [from, to] = [toEpochDay('2026-06-01') * 24, toEpochDay('2026-11-24') * 24];
  const [broke, mended] = [toEpochDay(BROKE) * 24, toEpochDay(MENDED) * 24];
  logReadings(
    fridge.id,
    Array.from({ length: to - from }, (_, index) => from + index).map(
      (hour) => [hour * HOUR, hour >= broke && hour < mended ? 22 : 4, 0.4] as const,
    ),
  );
  const { bulk } = connections();
  leek = bulk
    .prepare<[], { CH: number; CQ: number }>(
      `SELECT k."CH", k."CQ" FROM "Crop" c JOIN "LongevityConstants" k ON k."id" = c."longevityConstantsId" WHERE c."name" = 'Leek'`,
    )
    .get() as { CH: number; CQ: number };
});

describe('a store over a stretch of days', () => {
  it('shows the twelve months to today, and what of them was logged', () => {
    const page = getStoreClimate(fridge.id, {});
    expect(page).toMatchObject({ from: '2025-11-26', to: TODAY, days: 365 });
    // The last reading is an hour before the midnight that begins 24 November.
    expect(page.daysRead).toBeCloseTo(toEpochDay('2026-11-24') - toEpochDay('2026-06-01') - 1 / 24, 9);
    expect(page.unlogged).toHaveLength(2);
    expect(page.parts).toMatchObject([{ loggedIn: { name: 'Fridge A' }, target: { temperatureC: 4 } }]);
    expect(Math.max(...page.spans.map(({ highestTemperatureC }) => highestTemperatureC))).toBe(22);
  });

  it('looks no further than today, and takes a first day after the last for not said', () => {
    expect(getStoreClimate(fridge.id, { from: '2026-11-01', to: '2031-01-01' })).toMatchObject({ to: TODAY, days: 25 });
    expect(getStoreClimate(fridge.id, { from: '2030-01-01' })).toMatchObject({ from: '2025-11-26', to: TODAY });
  });

  it('counts the failure once, and the same hours month by month as over all', () => {
    const page = getStoreClimate(fridge.id, { from: '2026-06-01', to: '2026-09-30' });
    expect(page.excursions).toMatchObject([{ side: 'above', peak: 22 }]);
    const [failure] = page.excursions;
    // Out an hour's crossing before the first warm reading, back after the last.
    expect(failure).toMatchObject({ fromDay: toEpochDay('2026-07-02'), toDay: toEpochDay(MENDED) });
    const july = page.months.find(({ from }) => from === '2026-07-01');
    expect(july?.temperature.hoursAbove).toBeCloseTo(page.whole.temperature.hoursAbove, 9);
    expect(page.months.map(({ from, to }) => `${from} ${to}`)).toEqual([
      '2026-06-01 2026-06-30',
      '2026-07-01 2026-07-31',
      '2026-08-01 2026-08-31',
      '2026-09-01 2026-09-30',
    ]);
  });

  it('draws the target that held on each day', () => {
    setPhase(fridge.id, { from: '2026-08-01', parentId: null, targetTemperatureC: 2 });
    const { parts } = getStoreClimate(fridge.id, { from: '2026-07-01', to: '2026-08-31' });
    expect(parts.map(({ fromDay, target }) => [fromDay, target.temperatureC])).toEqual([
      [toEpochDay('2026-07-01'), 4],
      [toEpochDay('2026-08-01'), 2],
    ]);
  });

  it('takes a wider tolerance from the address, and a box the usual one of its fridge', async () => {
    const asked = { from: '2026-06-01', to: '2026-09-30', tolerance: 19 };
    expect(getStoreClimate(fridge.id, asked)).toMatchObject({ excursions: [], tolerance: { temperatureC: 19 } });
    const box = await makeStore({ name: 'Box 1', kind: 'box', parentId: fridge.id });
    expect(getStoreClimate(box.id, {}).tolerance).toEqual(getStoreClimate(fridge.id, {}).tolerance);
  });
});

describe('what it cost', () => {
  const costFrom = (from: string, to: string, store = fridge.id) =>
    getStoreClimateCost(store, getStoreClimate(store, { from, to }));
  /** Seven days at 22 °C instead of 4: so many days at the target more. */
  const sevenDays = () => 7 * (timesFaster(leek, 22) - 1);

  it('is what the warm days aged the seed beyond the same days at the target', async () => {
    await lotIn(fridge.id, 'L-2020-001');
    const cost = costFrom('2026-07-01', '2026-07-31');
    expect(cost.crops).toMatchObject([{ cropName: 'Leek', sealed: true, lots: 1, days: 31 }]);
    // The rate runs straight between readings, an hour at each end.
    expect(Math.abs((cost.crops[0]?.normalDays ?? 0) / sevenDays() - 1)).toBeLessThan(0.01);
    expect(cost.failures[0]?.costliest.normalDays).toBeCloseTo(cost.crops[0]?.normalDays ?? 0, 9);
    const [hit] = cost.lots;
    expect(hit).toMatchObject({ lotNumber: 'L-2020-001', normalDays: cost.crops[0]?.normalDays });
    expect(hit?.viability.without).toBeGreaterThan(hit?.viability.now ?? 1);
    expect(hit?.daysEarlier).toBeCloseTo(cost.crops[0]?.normalDays ?? 0, 6);
  });

  it('is nought in months without a failure', async () => {
    await lotIn(fridge.id, 'L-2020-001');
    const cost = costFrom('2026-08-01', '2026-10-31');
    expect(Math.abs(cost.crops[0]?.normalDays ?? 1)).toBeLessThan(1e-6);
    expect(cost.failures).toEqual([]);
  });

  it('reaches the boxes inside, and only for the days on which they stood there', async () => {
    const box = await makeStore({ name: 'Box 1', kind: 'box', parentId: fridge.id });
    const freezer = await makeStore({ name: 'Freezer A', kind: 'freezer', targetTemperatureC: '-18' });
    await lotIn(box.id, 'L-2020-001');
    const whole = costFrom('2026-07-01', '2026-07-31').crops[0]?.normalDays ?? 0;
    expect(Math.abs(whole / sevenDays() - 1)).toBeLessThan(0.01);
    setPhase(box.id, { from: '2026-07-06', parentId: freezer.id, targetTemperatureC: null });
    const part = costFrom('2026-07-01', '2026-07-31').crops[0];
    expect(part?.days).toBe(5);
    expect(Math.abs((part?.normalDays ?? 0) / ((3 / 7) * sevenDays()) - 1)).toBeLessThan(0.02);
    expect(costFrom('2026-07-01', '2026-07-31', freezer.id).crops[0]?.days).toBe(26);
  });

  it('leaves out seed that came later, and seed that was gone before', async () => {
    await lotIn(fridge.id, 'L-2026-001', { harvestedOn: '2026-07-20', storedOn: '2026-08-01' });
    const gone = await lotIn(fridge.id, 'L-2020-002');
    const { bulk } = connections();
    bulk
      .prepare(
        `INSERT INTO "Movement" ("id", "packetId", "on", "reason", "seeds", "byId") SELECT 'gone', "id", '2026-06-15', 'loss', -1000, 'hilum' FROM "Packet" WHERE "lotId" = ?`,
      )
      .run(gone.lotId);
    expect(costFrom('2026-07-01', '2026-07-31').packets).toBe(0);
    expect(costFrom('2026-06-01', '2026-07-31').packets).toBe(1);
    expect(costFrom('2026-07-01', '2026-08-31').crops).toMatchObject([{ lots: 1, days: 31 }]);
  });

  it('is said of the seed that lay there throughout: lots that came after the failure do not thin it', async () => {
    await lotIn(fridge.id, 'L-2020-001');
    const late = { harvestedOn: '2026-07-20', storedOn: '2026-08-01' };
    for (const number of ['L-2026-001', 'L-2026-002', 'L-2026-003']) await lotIn(fridge.id, number, late);
    const [leeks] = costFrom('2026-07-01', '2026-09-30').crops;
    expect(leeks).toMatchObject({ lots: 4, days: 92 });
    expect(Math.abs((leeks?.normalDays ?? 0) / sevenDays() - 1)).toBeLessThan(0.01);
  });

  it('tells sealed seed from open, and says why some has no figure', async () => {
    await lotIn(fridge.id, 'L-2020-001');
    await lotIn(fridge.id, 'L-2020-002', { container: 'paper-envelope', moisturePercent: '' });
    await lotIn(fridge.id, 'L-2020-003', { moisturePercent: '18', storeAnyway: 'on' });
    const cost = costFrom('2026-07-01', '2026-07-31');
    expect(cost.crops.map(({ sealed, lots }) => [sealed, lots]).toSorted()).toEqual([
      [false, 1],
      [true, 1],
    ]);
    expect(cost.uncounted).toMatchObject([{ cropName: 'Leek', packets: 1, reason: expect.stringContaining('15 %') }]);
  });
});

async function lotIn(storeId: string, lotNumber: string, overrides: Record<string, unknown> = {}) {
  const { accessionId } = await createLotWithPacket({ number: `${lotNumber}-first`, accessionName: lotNumber });
  const accession = connections()
    .bulk.prepare<[string], string>(`SELECT "number" FROM "Accession" WHERE "id" = ?`)
    .pluck()
    .get(accessionId);
  return makeLot({
    accession,
    lotNumber,
    storeId,
    seedCount: 1000,
    harvestedOn: '2020-09-15',
    storedOn: addDays('2020-09-15', 20),
    ...overrides,
  });
}

function setPhase(
  storeId: string,
  phase: { from: string; parentId: string | null; targetTemperatureC: number | null },
): void {
  connections()
    .bulk.prepare(
      `INSERT INTO "StorePhase" ("storeId", "from", "parentId", "targetTemperatureC", "byId") VALUES (?, ?, ?, ?, 'hilum')`,
    )
    .run(storeId, phase.from, phase.parentId, phase.targetTemperatureC);
}
