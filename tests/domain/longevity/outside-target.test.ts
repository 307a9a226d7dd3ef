import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { targetExcursions, timeOutside } from '@/lib/domain/longevity/outside-target';
import { storeClimate } from '@/lib/domain/longevity/store-climate';

const HOUR = 3600;
const BAND = { of: 'temperatureC', lower: 2, upper: 6 } as const;

/** Readings at [hour, degrees C, humidity]. */
function climateOf(rows: readonly (readonly [number, number, number?])[]) {
  return storeClimate(
    {
      epochSeconds: Float64Array.from(rows, ([hour]) => hour * HOUR),
      temperatureC: Float64Array.from(rows, ([, temperature]) => temperature),
      relativeHumidity: Float64Array.from(rows, ([, , humidity = Number.NaN]) => humidity),
    },
    { temperatureC: 4, relativeHumidity: 0.4 },
  );
}
const hourly = (temperatures: readonly number[]) => climateOf(temperatures.map((t, hour) => [hour, t]));
const outside = (climate: ReturnType<typeof climateOf>, from: number, to: number) =>
  timeOutside(climate, BAND, from * HOUR, to * HOUR);
const find = (climate: ReturnType<typeof climateOf>, from = 0, to = 1000) =>
  targetExcursions(climate, BAND, from * HOUR, to * HOUR);

describe('time outside the target', () => {
  it('agrees with a sum by the second over any readings', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 1, max: 60 }), fc.double({ min: -5, max: 15, noNaN: true })), {
          minLength: 2,
          maxLength: 12,
        }),
        fc.integer({ min: 0, max: 50 }),
        fc.integer({ min: 0, max: 400 }),
        (steps, from, length) => {
          let hour = 0;
          const rows = steps.map(([step, t]) => {
            hour += step;
            return [hour, t] as const;
          });
          const found = outside(climateOf(rows), from, from + length);
          let [above, below, logged] = [0, 0, 0];
          const step = 0.05;
          for (let at = from + step / 2; at < from + length; at += step) {
            const next = rows.findIndex(([h]) => h > at);
            const [left, right] = [rows[next - 1], rows[next]];
            if (!left || !right || right[0] - left[0] > 48) continue;
            const t = left[1] + ((right[1] - left[1]) * (at - left[0])) / (right[0] - left[0]);
            logged += step;
            if (t > BAND.upper) above += step;
            if (t < BAND.lower) below += step;
          }
          // Each crossing may fall within one step of the sum.
          const tolerance = step * (2 * rows.length + 1);
          expect(Math.abs(found.hoursLogged - logged)).toBeLessThan(tolerance);
          expect(Math.abs(found.hoursAbove - above)).toBeLessThan(tolerance);
          expect(Math.abs(found.hoursBelow - below)).toBeLessThan(tolerance);
        },
      ),
      { seed: 77, numRuns: 150 },
    );
  });

  it('adds over stretches, wherever they are cut', () => {
    const climate = hourly([4, 8, 8, 1, 4, 9, 3, 0, 0, 4, 4, 7, 12, 5]);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 13, noNaN: true }), (cut) => {
        const [whole, first, second] = [outside(climate, 0, 13), outside(climate, 0, cut), outside(climate, cut, 13)];
        for (const key of ['hoursLogged', 'hoursAbove', 'hoursBelow'] as const) {
          expect(Math.abs(whole[key] - first[key] - second[key])).toBeLessThan(1e-9);
        }
      }),
      { seed: 5, numRuns: 100 },
    );
  });

  it('counts nothing through a gap that is too long to bridge', () => {
    const climate = climateOf([
      [0, 10],
      [1, 10],
      [100, 10],
      [101, 10],
    ]);
    expect(outside(climate, 0, 200)).toMatchObject({ hoursLogged: 2, hoursAbove: 2, hoursBelow: 0 });
  });

  it('does not count a store that stands exactly at the edge', () => {
    expect(outside(hourly([6, 6, 2, 2]), 0, 3)).toMatchObject({ hoursAbove: 0, hoursBelow: 0, highest: 6, lowest: 2 });
  });

  it('takes humidity from the readings that have it', () => {
    const climate = climateOf([
      [0, 4, 0.6],
      [1, 4],
      [2, 4, 0.6],
      [3, 4],
    ]);
    const band = { of: 'relativeHumidity', lower: 0.3, upper: 0.5 } as const;
    expect(timeOutside(climate, band, 0, 3 * HOUR)).toMatchObject({ hoursLogged: 2, hoursAbove: 2, highest: 0.6 });
    expect(timeOutside(climate, band, 1.5 * HOUR, 3 * HOUR).hoursLogged).toBe(0.5);
  });

  it('refuses a band that runs backwards', () => {
    expect(() => timeOutside(hourly([4, 4]), { ...BAND, lower: 7 }, 0, 1)).toThrow(RangeError);
  });
});

describe('excursions', () => {
  it('begin and end where the line crosses the band, with the farthest reading as their peak', () => {
    const [first, ...others] = find(hourly([4, 8, 10, 8, 4, 4]));
    expect(others).toEqual([]);
    expect(first).toEqual({
      side: 'above',
      fromEpochSeconds: 0.5 * HOUR,
      toEpochSeconds: 3.5 * HOUR,
      peak: 10,
      peakEpochSeconds: 2 * HOUR,
    });
  });

  it('are one when the store was back for less than six hours, and two when for longer', () => {
    const warm = [10, 10];
    const back = (hours: number) => Array<number>(hours).fill(4);
    expect(find(hourly([...warm, ...back(5), ...warm]))).toHaveLength(1);
    expect(find(hourly([...warm, ...back(9), ...warm]))).toHaveLength(2);
  });

  it('are two when the store went from too warm to too cold between two readings', () => {
    expect(find(hourly([4, 10, -2, 4])).map(({ side, peak }) => [side, peak])).toEqual([
      ['above', 10],
      ['below', -2],
    ]);
  });

  it('end at a gap and are cut at the ends of the stretch', () => {
    const climate = climateOf([
      [0, 10],
      [10, 10],
      [100, 12],
      [110, 12],
    ]);
    expect(find(climate, 5, 105).map((e) => [e.fromEpochSeconds / HOUR, e.toEpochSeconds / HOUR])).toEqual([
      [5, 10],
      [100, 105],
    ]);
  });

  it('add up to the hours outside where no pause is bridged', () => {
    const climate = hourly([4, 10, 10, ...Array<number>(10).fill(4), 0, 0, ...Array<number>(10).fill(4)]);
    const hours = find(climate).reduce((sum, e) => sum + (e.toEpochSeconds - e.fromEpochSeconds) / HOUR, 0);
    const { hoursAbove, hoursBelow } = outside(climate, 0, 100);
    expect(Math.abs(hours - hoursAbove - hoursBelow)).toBeLessThan(1e-9);
  });
});
