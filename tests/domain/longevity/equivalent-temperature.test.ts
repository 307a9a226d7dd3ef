import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { equivalentTemperatureC } from '../../../lib/domain/longevity/equivalent-temperature';
import { storeClimate } from '../../../lib/domain/longevity/store-climate';
import { temperatureFactor } from '../../../lib/domain/longevity/viability-equation';

const barley = { CH: 0.04, CQ: 0.000428 };
const DAY = 86_400;
/** Hourly readings over whole days, from midnight to midnight. */
function hourly(days: number, temperatureAt: (hour: number) => number, target = 5) {
  const hours = Array.from({ length: days * 24 + 1 }, (_, hour) => hour);
  return storeClimate(
    {
      epochSeconds: Float64Array.from(hours, (hour) => hour * 3600),
      temperatureC: Float64Array.from(hours, temperatureAt),
    },
    { temperatureC: target },
  );
}

describe('equivalentTemperatureC', () => {
  it('is the temperature itself where it is steady, warm or cold, read or only meant', () => {
    for (const steady of [-25, -18, 0, 4, 30]) {
      expect(
        Math.abs(
          equivalentTemperatureC(
            hourly(10, () => steady),
            barley,
            1,
            9,
          ) - steady,
        ),
      ).toBeLessThan(1e-9);
      const unread = storeClimate(
        { epochSeconds: new Float64Array(0), temperatureC: new Float64Array(0) },
        { temperatureC: steady },
      );
      expect(Math.abs(equivalentTemperatureC(unread, barley, 1, 9) - steady)).toBeLessThan(1e-9);
    }
  });

  it('agrees with a sum by the minute over a daily swing of 20 C, and lies above the mean', () => {
    const swing = (hour: number) => 15 + 10 * Math.sin((2 * Math.PI * hour) / 24);
    let sum = 0;
    for (let minute = 0; minute < 1440; minute += 1)
      sum += temperatureFactor(barley, swing((minute + 0.5) / 60)) / 1440;
    // Undone by halving, not by the formula.
    let [low, high] = [-20, 60];
    while (high - low > 1e-10) {
      const middle = (low + high) / 2;
      if (temperatureFactor(barley, middle) < sum) low = middle;
      else high = middle;
    }
    const found = equivalentTemperatureC(hourly(4, swing), barley, 0, 4);
    // Hourly readings joined by straight lines: 0.1 % of the ageing, under a fiftieth of a degree.
    expect(Math.abs(found - low)).toBeLessThan(0.02);
    expect(found).toBeGreaterThan(16);
  });

  it('lies between the coldest and the warmest reading', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -25, max: 45, noNaN: true }), { minLength: 2, maxLength: 30 }),
        fc.double({ min: 0.02, max: 0.06, noNaN: true }),
        fc.double({ min: 0, max: 0.0003, noNaN: true }),
        (temperatures, CH, CQ) => {
          const days = temperatures.length - 1;
          const climate = storeClimate(
            {
              epochSeconds: Float64Array.from(temperatures, (_, day) => day * DAY),
              temperatureC: Float64Array.from(temperatures),
            },
            { temperatureC: 5 },
          );
          const found = equivalentTemperatureC(climate, { CH, CQ }, 0, days);
          expect(found).toBeGreaterThanOrEqual(Math.min(...temperatures) - 1e-9);
          expect(found).toBeLessThanOrEqual(Math.max(...temperatures) + 1e-9);
        },
      ),
      { seed: 1, numRuns: 200 },
    );
  });

  it('is the target where temperature makes no difference, and 0 where only 0 was and only its square counts', () => {
    expect(
      equivalentTemperatureC(
        hourly(3, () => 30),
        { CH: 0, CQ: 0 },
        0,
        3,
      ),
    ).toBe(5);
    expect(
      equivalentTemperatureC(
        hourly(3, () => 0),
        { CH: 0, CQ: 0.0004 },
        0,
        3,
      ),
    ).toBe(0);
  });

  it('refuses constants with the wrong sign, and no days', () => {
    const climate = hourly(3, () => 5);
    expect(() => equivalentTemperatureC(climate, { CH: -0.01, CQ: 0 }, 0, 3)).toThrow(/CH/);
    expect(() => equivalentTemperatureC(climate, { CH: 0.01, CQ: -0.01 }, 0, 3)).toThrow(/CQ/);
    expect(() => equivalentTemperatureC(climate, barley, 3, 3)).toThrow(/toDay/);
  });
});
