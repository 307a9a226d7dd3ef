import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromEpochDay, toEpochDay } from '../../../lib/domain/calendar/calendar-date';
import { ageingProbits } from '../../../lib/domain/longevity/ageing';
import { packetAgeing } from '../../../lib/domain/longevity/packet-ageing';
import type { SeedKind } from '../../../lib/domain/longevity/seed-kind';
import { type StoreClimate, storeClimate } from '../../../lib/domain/longevity/store-climate';
import { sigmaDays } from '../../../lib/domain/longevity/viability-equation';
import { equilibriumMoisture } from '../../../lib/domain/moisture/equilibrium';
import { type Placement, storageHistory } from '../../../lib/domain/stock/storage-history';

/** Barley: Ellis & Roberts 1980, Ann. Bot. 45:31-37 (constants from memory; the range is published). */
const BARLEY: SeedKind = {
  constants: { KE: 9.983, CW: 5.896, CH: 0.04, CQ: 0.000428 },
  constantsRange: { moistureFromPercent: 5.5, moistureToPercent: 24.6, temperatureFromC: 3, temperatureToC: 90 },
  storageBehaviour: 'orthodox',
  oilFraction: 0.02,
};
const NO_READINGS = { epochSeconds: new Float64Array(0), temperatureC: new Float64Array(0) };
const CLIMATES: Record<string, StoreClimate> = {
  pantry: storeClimate(NO_READINGS, { temperatureC: 12, relativeHumidity: 0.45 }),
  freezer: storeClimate(NO_READINGS, { temperatureC: -18 }),
  bog: storeClimate(NO_READINGS, { temperatureC: 14, relativeHumidity: 0.9 }),
};
const climateOf = (storeId: string) => CLIMATES[storeId] as StoreClimate;
const TODAY = '2026-11-25';
const today = toEpochDay(TODAY);

const place = (
  storeId: string,
  from: string,
  moisturePercent: number | null = 9,
  container = 'glass-jar',
): Placement => ({
  storeId,
  from,
  container,
  moisturePercent,
});
const ageingOf = (placements: Placement[], seed: SeedKind = BARLEY) =>
  packetAgeing(storageHistory(placements, TODAY), climateOf, seed);
function mustAge(placements: Placement[], seed: SeedKind = BARLEY) {
  const ageing = ageingOf(placements, seed);
  if (!ageing.ok) throw new Error(ageing.reason);
  return ageing;
}

describe('ageing of a packet over its storage history', () => {
  it('agrees with the plain sum over its stays when the stores are steady', () => {
    const ageing = mustAge([place('pantry', '2016-11-25', 10), place('freezer', '2020-11-25', 7)]);
    const expected = ageingProbits(BARLEY.constants, [
      { days: 1461, temperatureC: 12, moisturePercent: 10 },
      { days: 2191, temperatureC: -18, moisturePercent: 7 },
    ]);
    expect(Math.abs(ageing.probitsAt(today) / expected - 1)).toBeLessThan(1e-9);
  });

  it('lets seed in an open container follow the humidity of its store', () => {
    const ageing = mustAge([place('pantry', '2024-11-25', null, 'paper-envelope')]);
    const moisturePercent = equilibriumMoisture({ relativeHumidity: 0.45, temperatureC: 12, oilFraction: 0.02 });
    const expected = 730 / sigmaDays(BARLEY.constants, { moisturePercent, temperatureC: 12 });
    expect(Math.abs(ageing.probitsAt(today) / expected - 1)).toBeLessThan(1e-9);
    expect(ageing.moistureAssumed).toBe(false);
  });

  it('is nothing at the first placement and goes on at the present rate after today', () => {
    const ageing = mustAge([place('pantry', '2019-05-01')]);
    expect(ageing.probitsAt(toEpochDay('2019-05-01'))).toBe(0);
    expect(ageing.probitsAt(today + 100) - ageing.probitsAt(today)).toBeCloseTo(100 * ageing.ratePerDay, 12);
    expect(ageing.ratePerDay).toBeCloseTo(
      1 / sigmaDays(BARLEY.constants, { moisturePercent: 9, temperatureC: 12 }),
      12,
    );
  });

  it('takes the last twelve months of the present store as its future, as they were logged', () => {
    const days = Array.from({ length: 366 }, (_, index) => today - 365 + index);
    // Cold for the first hundred of the 365 days, warm since: both count.
    const temperatureOn = (day: number) => (day < today - 265 ? 2 : 16);
    CLIMATES.warmed = storeClimate(
      {
        epochSeconds: Float64Array.from(days, (day) => day * 86_400),
        temperatureC: Float64Array.from(days, temperatureOn),
      },
      { temperatureC: 12 },
    );
    const rateAt = (temperatureC: number) => 1 / sigmaDays(BARLEY.constants, { moisturePercent: 9, temperatureC });
    const expected = (100 * rateAt(2) + 265 * rateAt(16)) / 365;
    const ageing = mustAge([place('warmed', '2010-01-01')]);
    expect(Math.abs(ageing.ratePerDay / expected - 1)).toBeLessThan(0.005);
  });

  it('is the same when a stay is told in two parts', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3000 }), fc.constantFrom('pantry', 'freezer'), (daysAgo, storeId) => {
        const middle = fromEpochDay(today - daysAgo);
        const whole = mustAge([place(storeId, '2015-01-01')]);
        const parts = mustAge([place(storeId, '2015-01-01'), place(storeId, middle)]);
        for (const day of [today - 3500, today - daysAgo, today - 1, today, today + 900]) {
          expect(parts.probitsAt(day)).toBeCloseTo(whole.probitsAt(day), 10);
        }
      }),
      { seed: 11, numRuns: 60 },
    );
  });

  it('never goes down', () => {
    const ageing = mustAge([
      place('pantry', '2014-03-01'),
      place('freezer', '2018-03-01'),
      place('pantry', '2022-03-01'),
    ]);
    const days = Array.from({ length: 200 }, (_, index) => toEpochDay('2014-03-01') + index * 30);
    const lost = days.map((day) => ageing.probitsAt(day));
    expect(lost.every((probits, index) => index === 0 || probits >= (lost[index - 1] as number))).toBe(true);
  });

  it('says when the moisture was assumed, and reckons as for seed from an ordinary room', () => {
    const assumed = mustAge([place('pantry', '2020-01-01', null)]);
    expect(assumed.moistureAssumed).toBe(true);
    expect(assumed.notes.join(' ')).toMatch(/Moisture was not measured/);
    expect(assumed.moisturePercent).toBeCloseTo(
      equilibriumMoisture({ relativeHumidity: 0.5, temperatureC: 20, oilFraction: 0.02 }),
      12,
    );
  });

  it('gains nothing below the low-moisture limit in an open container either', () => {
    for (const [name, relativeHumidity] of [
      ['dry', 0.05],
      ['drier', 0.02],
    ] as const) {
      CLIMATES[name] = storeClimate(NO_READINGS, { temperatureC: 12, relativeHumidity });
    }
    const [dry, drier] = ['dry', 'drier'].map((store) => mustAge([place(store, '2020-01-01', null, 'cloth-bag')]));
    expect(drier?.probitsAt(today)).toBe(dry?.probitsAt(today));
  });

  it('lets an open packet be too moist for ten days a year, not for a month', () => {
    const damp = (store: string, dampDays: number) => {
      const days = Array.from({ length: 365 }, (_, index) => today - 365 + index);
      CLIMATES[store] = storeClimate(
        {
          epochSeconds: Float64Array.from(days, (day) => day * 86_400),
          temperatureC: Float64Array.from(days, () => 12),
          relativeHumidity: Float64Array.from(days, (_, index) => (index < dampDays ? 0.93 : 0.45)),
        },
        { temperatureC: 12, relativeHumidity: 0.45 },
      );
      return ageingOf([place(store, '2025-11-25', null, 'cloth-bag')]).ok;
    };
    expect(damp('a damp week', 7)).toBe(true);
    expect(damp('a damp month', 30)).toBe(false);
  });

  it('holds up to 15 % moisture', () => {
    expect(ageingOf([place('pantry', '2020-01-01', 15)]).ok).toBe(true);
    expect(ageingOf([place('pantry', '2020-01-01', 15.1)]).ok).toBe(false);
  });

  it('gains nothing below the low-moisture limit', () => {
    const dry = mustAge([place('pantry', '2020-01-01', 2)]);
    const drier = mustAge([place('pantry', '2020-01-01', 1)]);
    expect(drier.probitsAt(today)).toBe(dry.probitsAt(today));
    expect(dry.notes.join(' ')).toMatch(/no longer lengthens life/);
  });

  it.each([
    ['sealed too moist', [place('pantry', '2020-01-01', 15.5)], BARLEY, /15\.5 % moisture the equation does not hold/],
    [
      'open in a damp store',
      [place('bog', '2020-01-01', null, 'cloth-bag')],
      BARLEY,
      /takes up more than 15 % moisture/,
    ],
    [
      'open where no humidity is known',
      [place('freezer', '2020-01-01', 8, 'paper-envelope')],
      BARLEY,
      /humidity target/,
    ],
    [
      'seed that dies when dried',
      [place('pantry', '2020-01-01')],
      { ...BARLEY, storageBehaviour: 'recalcitrant' as const },
      /dies when dried/,
    ],
  ])('gives no forecast for %s, and says why', (_what, placements, seed, reason) => {
    const ageing = ageingOf(placements, seed);
    expect(ageing.ok).toBe(false);
    if (!ageing.ok) expect(ageing.reason).toMatch(reason);
  });

  it('refuses a packet that was never anywhere', () => {
    expect(() => packetAgeing([], climateOf, BARLEY)).toThrow(RangeError);
  });
});
