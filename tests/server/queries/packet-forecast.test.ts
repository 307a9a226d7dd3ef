import { expect, it } from 'vitest';
import { toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { viabilityAt } from '@/lib/domain/longevity/lot-model';
import { splitPacket } from '@/lib/server/commands/split-packet';
import { getLotPage } from '@/lib/server/queries/lot-page';
import type { PacketForecast } from '@/lib/server/queries/packet-forecast';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { VOLUNTEER } from '@/tests/support/people';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

type Forecast = Extract<PacketForecast, { ok: true }>;

/** 1000 seeds in a warm cupboard since 2020; 300 of them, a year later, in a freezer. */
async function splitLot(overrides: Record<string, unknown> = {}) {
  const warm = await makeStore({ name: 'Warm cupboard', kind: 'cabinet', targetTemperatureC: '15' });
  const freezer = await makeStore({ name: 'Freezer', kind: 'freezer', targetTemperatureC: '-18' });
  const lot = await makeLot({
    harvestedOn: '2020-09-01',
    storedOn: '2020-10-01',
    storeId: warm.id,
    storeAnyway: 'on',
  });
  const { packetId: otherId } = await splitPacket(VOLUNTEER, {
    packetId: lot.packetId,
    amount: '300',
    unit: 'seeds',
    role: 'base',
    storeId: freezer.id,
    container: 'foil-pouch',
    moisturePercent: '6',
    sealed: 'on',
    from: '2021-10-01',
    ...overrides,
  });
  const page = await getLotPage(lot.number, {});
  if (!page) throw new Error('no lot');
  return { page, packetId: lot.packetId, otherId };
}

it('shows what a freezer saves: split seed has the past in common and ages apart from then on', async () => {
  const { page, packetId, otherId } = await splitLot();
  const [warm, cold] = [packetId, otherId].map((id) => page.packetForecasts.get(id) as Forecast) as [
    Forecast,
    Forecast,
  ];
  expect(cold.median).toBeGreaterThan(warm.median + 0.05);
  expect(cold.inTenYears).toBeGreaterThan(warm.inTenYears + 0.3);
  // In the freezer next to nothing was lost: what it lost is the first year in the cupboard.
  const ageing = page.evaluated.ageing;
  if (!ageing?.ok) throw new Error('no ageing');
  const firstYear = ageing.probitsAt(toEpochDay('2021-10-01'));
  expect(cold.probitsLost).toBeGreaterThanOrEqual(firstYear);
  expect(cold.probitsLost - firstYear).toBeLessThan(0.05);
});

it("is, for the fullest packet, the lot's own forecast", async () => {
  const { page, packetId } = await splitLot();
  const { posterior, judgement, ageing } = page.evaluated;
  const forecast = page.packetForecasts.get(packetId) as Forecast;
  const { median, lower, upper } = judgement.viabilityNow as { median: number; lower: number; upper: number };
  expect(forecast).toMatchObject({ median, lower, upper });
  if (!posterior || !ageing?.ok) throw new Error('no forecast');
  expect(viabilityAt(posterior, { probitsLost: forecast.probitsLost, level: 0.9 }).median).toBe(forecast.median);
});

it('says why where the equation does not hold for one packet, and still gives the other its figures', async () => {
  const { page, packetId, otherId } = await splitLot({ moisturePercent: '16', storeAnyway: 'on' });
  expect(page.packetForecasts.get(otherId)).toMatchObject({ ok: false, reason: expect.stringContaining('16 %') });
  expect(page.packetForecasts.get(packetId)).toMatchObject({ ok: true });
});
