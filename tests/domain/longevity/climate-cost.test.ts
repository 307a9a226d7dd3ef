import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromEpochDay } from '@/lib/domain/calendar/calendar-date';
import { climateCost } from '@/lib/domain/longevity/climate-cost';
import { type StoreClimate, storeClimate } from '@/lib/domain/longevity/store-climate';
import type { StoragePeriod } from '@/lib/domain/stock/storage-history';
import { expectClose, goldenRows } from '../../support/golden-table';
import { seedOf } from './seed-kinds';

const FIRST_DAY = 20_000;
const TARGET = { temperatureC: 4, relativeHumidity: 0.42 };
const PROPERTY = { seed: 1204, numRuns: 100 };

/** The course of tests/golden/climate-cost.R. */
const temperatureOn = (day: number) =>
  4 +
  0.8 * Math.sin(2 * Math.PI * day) +
  0.5 * Math.sin((2 * Math.PI * day) / 30) +
  19 * Math.exp(-(((day - 45) / 6) ** 2));
const humidityOn = (day: number) =>
  0.42 + 0.03 * Math.sin((2 * Math.PI * day) / 7) + 0.3 * Math.exp(-(((day - 46) / 7) ** 2));

function logged(days: number, everyMinutes: number, temperature: (day: number) => number, humidity = humidityOn) {
  const count = (days * 1440) / everyMinutes + 1;
  const at = Float64Array.from({ length: count }, (_, i) => (i * everyMinutes) / 1440);
  return storeClimate(
    {
      epochSeconds: at.map((day) => Math.round((FIRST_DAY + day) * 86_400)),
      temperatureC: at.map(temperature),
      relativeHumidity: at.map(humidity),
    },
    TARGET,
  );
}

const stay = (over: Partial<StoragePeriod> = {}): StoragePeriod => ({
  storeId: 'fridge',
  climateId: 'fridge',
  from: fromEpochDay(FIRST_DAY - 1000),
  to: fromEpochDay(FIRST_DAY + 1000),
  days: 2000,
  hermetic: true,
  moisturePercent: 6,
  ...over,
});
const BARLEY = seedOf({ KE: 9.983, CW: 5.896, CH: 0.04, CQ: 0.000428 }, { oil: 0.02 });

function costOf(climate: StoreClimate, from: number, to: number, period = stay(), seed = BARLEY) {
  const cost = climateCost([period], () => climate, seed, FIRST_DAY + from, FIRST_DAY + to);
  if (!cost.ok) throw new Error(cost.reason);
  return cost;
}

describe('what a failure cost, against R integrating 1/sigma over the same course', () => {
  const climate = logged(120, 10, temperatureOn);
  const seeds = new Map(
    goldenRows<{ crop: string; KE: number; CW: number; CH: number; CQ: number; oil: number }>(
      'climate-cost',
      'seeds',
    ).map((row) => [row.crop, seedOf(row, { oil: row.oil })]),
  );
  interface Row {
    crop: string;
    moisture?: number;
    from: number;
    length: number;
    probits: number;
    normal: number;
  }
  /** Straight lines between readings ten minutes apart, on a course with a failure of some days. */
  const SAMPLING_ERROR = 2e-5;

  it('samples the course that R integrated', () => {
    for (const row of goldenRows<{ day: number; temperature: number; humidity: number }>('climate-cost', 'course')) {
      expectClose(temperatureOn(row.day), row.temperature, 1e-13, row);
      expectClose(humidityOn(row.day), row.humidity, 1e-13, row);
    }
  });

  it.each(['sealed', 'open'] as const)('%s seed', (kind) => {
    for (const row of goldenRows<Row>('climate-cost', kind)) {
      const period = stay({ hermetic: kind === 'sealed', moisturePercent: row.moisture ?? null });
      const seed = seeds.get(row.crop) ?? BARLEY;
      const cost = costOf(climate, row.from, row.from + row.length, period, seed);
      expectClose(cost.probits, row.probits, SAMPLING_ERROR, row);
      expectClose(cost.normalProbits, row.normal, 1e-11, row);
      const extra = row.probits - row.normal;
      expect(Math.abs(cost.extraProbits - extra)).toBeLessThan(SAMPLING_ERROR * row.probits);
      expect(Math.abs(cost.normalDays - (extra / row.normal) * row.length)).toBeLessThan(
        SAMPLING_ERROR * (row.probits / row.normal) * row.length,
      );
    }
  });
});

describe('laws of the cost', () => {
  const climate = logged(120, 60, temperatureOn);
  const day = fc.integer({ min: -50, max: 200 });
  const period = fc.record({ hermetic: fc.boolean(), moisturePercent: fc.double({ min: 3, max: 12, noNaN: true }) });

  it('adds over stretches, wherever they are cut', () => {
    fc.assert(
      fc.property(fc.tuple(day, day, day), period, (days, over) => {
        const [a, b, c] = days.toSorted((x, y) => x - y) as [number, number, number];
        const [whole, first, second] = [
          costOf(climate, a, c, stay(over)),
          costOf(climate, a, b, stay(over)),
          costOf(climate, b, c, stay(over)),
        ];
        for (const key of ['days', 'daysRead', 'probits', 'normalProbits', 'extraProbits', 'normalDays'] as const) {
          expect(Math.abs(whole[key] - first[key] - second[key])).toBeLessThan(1e-9 * (1 + Math.abs(whole[key])));
        }
      }),
      PROPERTY,
    );
  });

  it('is nought where the readings equal the target, and where there are none', () => {
    const atTarget = logged(
      120,
      60,
      () => TARGET.temperatureC,
      () => TARGET.relativeHumidity,
    );
    const unlogged = storeClimate({ epochSeconds: new Float64Array(), temperatureC: new Float64Array() }, TARGET);
    for (const steady of [atTarget, unlogged]) {
      for (const hermetic of [true, false]) {
        const cost = costOf(steady, -30, 150, stay({ hermetic }));
        expect(cost.probits).toBeGreaterThan(0);
        expect(Math.abs(cost.extraProbits)).toBeLessThan(1e-12 * cost.probits);
        expect(Math.abs(cost.normalDays)).toBeLessThan(1e-9);
      }
    }
  });

  it('scales with 1/sigma: a KE one lower costs ten times the probits and as many normal days', () => {
    const faster = seedOf({ ...BARLEY.constants, KE: BARLEY.constants.KE - 1 }, { oil: 0.02 });
    fc.assert(
      fc.property(day, fc.integer({ min: 1, max: 60 }), period, (from, length, over) => {
        const [slow, fast] = [
          costOf(climate, from, from + length, stay(over)),
          costOf(climate, from, from + length, stay(over), faster),
        ];
        expect(Math.abs(fast.extraProbits - 10 * slow.extraProbits)).toBeLessThan(1e-11 * fast.probits);
        expect(Math.abs(fast.normalDays - slow.normalDays)).toBeLessThan(1e-7);
      }),
      PROPERTY,
    );
  });

  it('costs sealed seed as many normal days at every moisture', () => {
    const [dry, moist] = [4, 11].map(
      (moisturePercent) => costOf(climate, 30, 60, stay({ moisturePercent })).normalDays,
    );
    expect(dry).toBeGreaterThan(10);
    expect(Math.abs((dry as number) - (moist as number))).toBeLessThan(1e-9);
  });

  it('spares seed in a store colder than its target', () => {
    const cold = logged(60, 60, () => 1);
    expect(costOf(cold, 5, 50).extraProbits).toBeLessThan(0);
    expect(costOf(cold, 5, 50).normalDays).toBeLessThan(0);
  });
});

describe('which days count', () => {
  const climate = logged(120, 60, temperatureOn);

  it('leaves out days on which the packet lay elsewhere', () => {
    const visitor = stay({ from: fromEpochDay(FIRST_DAY + 40), to: fromEpochDay(FIRST_DAY + 50), days: 10 });
    expect(costOf(climate, 0, 120, visitor)).toEqual(costOf(climate, 40, 50, visitor));
    expect(costOf(climate, 0, 40, visitor)).toMatchObject({ days: 0, probits: 0, extraProbits: 0, normalDays: 0 });
  });

  it('takes each stay under its own climate', () => {
    const kept = stay({ to: fromEpochDay(FIRST_DAY + 45), climateId: 'fridge' });
    const moved = stay({ from: fromEpochDay(FIRST_DAY + 45), climateId: 'freezer' });
    const freezer = storeClimate(
      { epochSeconds: new Float64Array(), temperatureC: new Float64Array() },
      { temperatureC: -18 },
    );
    const cost = climateCost(
      [kept, moved],
      (id) => (id === 'freezer' ? freezer : climate),
      BARLEY,
      FIRST_DAY + 40,
      FIRST_DAY + 60,
    );
    if (!cost.ok) throw new Error(cost.reason);
    const inFridge = costOf(climate, 40, 45).extraProbits;
    expect(Math.abs(cost.extraProbits / inFridge - 1)).toBeLessThan(1e-9);
    expect(cost).toMatchObject({ days: 20, daysRead: 5 });
  });

  it('has no figure where open seed has no humidity to go by, and says why', () => {
    const dryless = storeClimate(climate.readings, { temperatureC: 4 });
    const cost = climateCost([stay({ hermetic: false })], () => dryless, BARLEY, FIRST_DAY, FIRST_DAY + 10);
    expect(cost).toMatchObject({ ok: false, reason: expect.stringContaining('humidity target') });
  });

  it('refuses a stretch that runs backwards', () => {
    expect(() => costOf(climate, 10, 9)).toThrow(/climateCost: toDay/);
  });
});
