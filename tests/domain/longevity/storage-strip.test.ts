import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromEpochDay, toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { packetAgeing } from '@/lib/domain/longevity/packet-ageing';
import { stayAgeing } from '@/lib/domain/longevity/stay-ageing';
import { storageStrip } from '@/lib/domain/longevity/storage-strip';
import { storeClimate } from '@/lib/domain/longevity/store-climate';
import { splitStays } from '@/lib/domain/stock/split-stays';
import { type Placement, storageHistory } from '@/lib/domain/stock/storage-history';
import { seedOf } from './seed-kinds';

const TODAY = '2026-11-25';
const today = toEpochDay(TODAY);
const BARLEY = seedOf({ KE: 9.983, CW: 5.896, CH: 0.04, CQ: 0.000428 }, { oil: 0.02, limit: 2.5 });

const days = Array.from({ length: 900 }, (_, index) => today - 1200 + index);
const fridge = storeClimate(
  {
    epochSeconds: Float64Array.from(days, (day) => day * 86_400),
    temperatureC: Float64Array.from(days, (day) => (day % 200 < 20 ? 22 : 4)),
    relativeHumidity: new Float64Array(days.length).fill(0.45),
  },
  { temperatureC: 4, relativeHumidity: 0.42 },
);
const freezer = storeClimate(
  { epochSeconds: new Float64Array(), temperatureC: new Float64Array() },
  { temperatureC: -18, relativeHumidity: 0.3 },
);
const climateOf = (id: string) => (id === 'freezer' ? freezer : fridge);
/** The box stood in the freezer until two years ago, then in the fridge. */
const climatesOf = (storeId: string) =>
  storeId === 'box'
    ? [
        { fromDay: -Infinity, climateId: 'freezer' },
        { fromDay: today - 730, climateId: 'box' },
      ]
    : [{ fromDay: -Infinity, climateId: storeId }];

const place = (daysAgo: number, storeId: string, container = 'glass-jar', moisturePercent: number | null = 6) => ({
  storeId,
  from: fromEpochDay(today - daysAgo),
  container,
  moisturePercent,
});

function stripOf(placements: Placement[], care: Parameters<typeof storageStrip>[0]['care'] = []) {
  const periods = splitStays(storageHistory(placements, TODAY), climatesOf);
  const ageing = packetAgeing(periods, climateOf, BARLEY);
  if (!ageing.ok) throw new Error(ageing.reason);
  const strip = storageStrip({
    harvestedOn: fromEpochDay(today - 2000),
    placements,
    periods,
    ageing,
    climateOf,
    care,
  });
  return { strip, ageing, periods };
}

describe('the strip of a packet', () => {
  const anyPlacements = fc
    .array(
      fc.tuple(
        fc.integer({ min: 0, max: 1900 }),
        fc.constantFrom('fridge', 'freezer', 'box'),
        fc.constantFrom('glass-jar', 'foil-pouch', 'paper-envelope'),
        fc.constantFrom(5, 6.5, 9),
      ),
      { minLength: 1, maxLength: 6 },
    )
    .map((all) => all.toSorted((a, b) => b[0] - a[0]).map((one) => place(...one)));

  it('adds up to the ageing of the forecast, stay by stay as the stay alone gives it', () => {
    fc.assert(
      fc.property(anyPlacements, (placements) => {
        const { strip, ageing, periods } = stripOf(placements);
        const sum = strip.stays.reduce((total, stay) => total + (stay.probits ?? Number.NaN), 0);
        const whole = ageing.probitsAt(today);
        expect(Math.abs(sum - whole)).toBeLessThanOrEqual(1e-12 * whole);
        expect(strip.stays.at(-1)?.probitsSoFar ?? 0).toBe(whole);
        const alone = periods
          .filter(({ from, to }) => from < to)
          .map((period) => {
            const stay = stayAgeing(period, climateOf(period.climateId), BARLEY);
            if (!stay.ok) throw new Error(stay.reason);
            return stay.between(toEpochDay(period.from), toEpochDay(period.to));
          });
        strip.stays.forEach(({ probits }, index) => {
          expect(Math.abs((probits ?? Number.NaN) - (alone[index] as number))).toBeLessThan(1e-12 * whole);
        });
      }),
      { seed: 41, numRuns: 200 },
    );
  });

  it('is unbroken from the first placement to today, in stays and in slices', () => {
    fc.assert(
      fc.property(anyPlacements, (placements) => {
        const { strip } = stripOf(placements);
        for (const pieces of [strip.stays, strip.cells]) {
          const end = pieces.reduce((day, piece) => {
            expect(piece.fromDay).toBe(day);
            expect(piece.toDay).toBeGreaterThan(piece.fromDay);
            return piece.toDay;
          }, strip.storedDay);
          expect(end).toBe(today);
        }
        expect(strip.cells.length).toBeLessThan(90);
        strip.line.reduce((before, { probits }) => {
          expect(probits).toBeGreaterThanOrEqual(before);
          return probits;
        }, 0);
      }),
      { seed: 42, numRuns: 100 },
    );
  });

  it('tells a move, a repacking, both at once, and a box that was carried elsewhere', () => {
    const { strip } = stripOf([
      place(1500, 'fridge'),
      place(1200, 'box'),
      place(600, 'box', 'foil-pouch'),
      place(500, 'box', 'foil-pouch'),
      place(300, 'fridge', 'paper-envelope', null),
    ]);
    expect(strip.events.map(({ day, what }) => [today - day, what])).toEqual([
      [1200, 'moved'],
      [730, 'climate changed'],
      [600, 'repacked'],
      [500, 'repacked'],
      [300, 'moved and repacked'],
    ]);
  });

  it('marks what was done to the container, on days in store only', () => {
    const { strip } = stripOf(
      [place(100, 'fridge')],
      [
        { on: fromEpochDay(today - 200), what: 'sealed' },
        { on: fromEpochDay(today - 50), what: 'opened' },
      ],
    );
    expect(strip.events).toEqual([{ day: today - 50, what: 'opened', stay: null }]);
  });

  it('never draws as measured what was not logged', () => {
    const { strip } = stripOf([place(1500, 'freezer'), place(1000, 'fridge')]);
    // The last reading was taken at the midnight that begins day 699.
    expect(strip.stays.map(({ shareRead }) => Math.round(1000 * shareRead))).toEqual([0, 699]);
    expect(strip.cells.filter(({ fromDay }) => fromDay < today - 1000).every(({ measured }) => !measured)).toBe(true);
    const [inFridge] = strip.cells.filter(({ fromDay }) => fromDay >= today - 1000);
    expect(inFridge?.measured).toBe(true);
    expect(strip.cells.at(-1)?.measured).toBe(false);
  });

  it('shows the history, without ageing, of seed that has no forecast', () => {
    const placements = [place(400, 'fridge')];
    const strip = storageStrip({
      harvestedOn: fromEpochDay(today - 420),
      placements,
      periods: storageHistory(placements, TODAY),
      ageing: { ok: false, reason: 'No constants.' },
      climateOf,
      care: [],
    });
    expect(strip).toMatchObject({ fromDay: today - 420, storedDay: today - 400, toDay: today, line: [] });
    expect(strip.stays).toMatchObject([{ probits: null, probitsSoFar: null, moisturePercent: 6 }]);
  });
});
