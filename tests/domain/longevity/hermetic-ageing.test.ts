import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ageingProbits } from '../../../lib/domain/longevity/ageing';
import { hermeticAgeing, temperatureIntegral } from '../../../lib/domain/longevity/hermetic-ageing';
import { storeClimate } from '../../../lib/domain/longevity/store-climate';

const barley = { KE: 9.983, CW: 5.896, CH: 0.04, CQ: 0.000428 };
const hourly = (days: number, temperatureAt: (hour: number) => number) => {
  const count = days * 24;
  return {
    epochSeconds: Float64Array.from({ length: count }, (_, hour) => hour * 3600),
    temperatureC: Float64Array.from({ length: count }, (_, hour) => temperatureAt(hour)),
  };
};

describe('hermeticAgeing', () => {
  it('agrees with the equation at constant temperature to 1e-12', () => {
    const temperature = fc.double({ min: -25, max: 45, noNaN: true });
    const moisture = fc.double({ min: 3, max: 15, noNaN: true });
    const day = fc.integer({ min: -50, max: 200 });
    fc.assert(
      fc.property(
        temperature,
        moisture,
        day,
        fc.integer({ min: 1, max: 400 }),
        (temperatureC, moisturePercent, from, days) => {
          const climate = storeClimate(
            hourly(120, () => temperatureC),
            { temperatureC },
          );
          const expected = ageingProbits(barley, [{ days, temperatureC, moisturePercent }]);
          const found = hermeticAgeing(climate, barley, moisturePercent, from, from + days);
          expect(Math.abs(found / expected - 1)).toBeLessThan(1e-12);
        },
      ),
      { seed: 4, numRuns: 60 },
    );
  });

  it('follows a daily swing: ages as a fine sum of the equation does, and more than at the mean temperature', () => {
    const swing = (hour: number) => 15 + 10 * Math.sin((2 * Math.PI * hour) / 24);
    const climate = storeClimate(hourly(31, swing), { temperatureC: 15 });
    const fine = Array.from({ length: 30 * 24 * 60 }, (_, minute) => ({
      days: 1 / 1440,
      temperatureC: swing((minute + 0.5) / 60),
      moisturePercent: 8,
    }));
    const expected = ageingProbits(barley, fine);
    const found = hermeticAgeing(climate, barley, 8, 0, 30);
    expect(Math.abs(found / expected - 1)).toBeLessThan(0.001);
    expect(found).toBeGreaterThan(ageingProbits(barley, [{ days: 30, temperatureC: 15, moisturePercent: 8 }]));
  });

  it('answers for a store without any reading from its target', () => {
    const climate = storeClimate(
      hourly(0, () => 0),
      { temperatureC: -18 },
    );
    const expected = ageingProbits(barley, [{ days: 3650, temperatureC: -18, moisturePercent: 6 }]);
    expect(Math.abs(hermeticAgeing(climate, barley, 6, 15_000, 18_650) / expected - 1)).toBeLessThan(1e-12);
  });

  it('builds one integral per pair of temperature coefficients and keeps it', () => {
    const climate = storeClimate(
      hourly(3, () => 5),
      { temperatureC: 5 },
    );
    const first = temperatureIntegral(climate, barley);
    expect(temperatureIntegral(climate, { CH: barley.CH, CQ: barley.CQ })).toBe(first);
    expect(temperatureIntegral(climate, { CH: 0.0322, CQ: 0.000454 })).not.toBe(first);
  });

  it('reads twenty stores of five years of hourly readings in well under two seconds', () => {
    const climates = Array.from({ length: 20 }, (_, store) =>
      storeClimate(
        hourly(1826, (hour) => store + Math.sin(hour / 4)),
        { temperatureC: store },
      ),
    );
    const started = performance.now();
    let sum = 0;
    for (const climate of climates) sum += hermeticAgeing(climate, barley, 6, 0, 1826);
    const milliseconds = performance.now() - started;
    expect(sum).toBeGreaterThan(0);
    expect(milliseconds).toBeLessThan(2000);
  });
});
