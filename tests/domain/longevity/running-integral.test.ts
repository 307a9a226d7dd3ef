import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { integralBetween, integrateOverReadings } from '../../../lib/domain/longevity/running-integral';
import { storeClimate } from '../../../lib/domain/longevity/store-climate';

const climateOf = (hours: number[]) =>
  storeClimate(
    {
      epochSeconds: Float64Array.from(hours, (hour) => hour * 3600),
      temperatureC: Float64Array.from(hours, () => 5),
    },
    { temperatureC: 5 },
  );

describe('integrateOverReadings', () => {
  it('runs straight from reading to reading across midnight', () => {
    // Rate 0 at 12:00 of day 0, rate 2 at 12:00 of day 1: 1 at midnight. Target rate 0 before and after.
    const rates = [0, 2];
    const integral = integrateOverReadings(climateOf([12, 36]), 0, (i) => rates[i] as number);
    expect(integralBetween(integral, 0, 1)).toBeCloseTo(0.25, 12);
    expect(integralBetween(integral, 1, 2)).toBeCloseTo(0.75, 12);
  });

  it('takes the target before the first reading, after the last, and through a long gap', () => {
    // One reading at noon of day 0 (rate 0) and one at noon of day 10 (rate 0); the gap is far longer than 48 h.
    const integral = integrateOverReadings(climateOf([12, 252]), 3, () => 0);
    expect(integralBetween(integral, -5, 0)).toBeCloseTo(15, 12);
    expect(integralBetween(integral, 0, 11)).toBeCloseTo(33, 12);
    expect(integralBetween(integral, 11, 20)).toBeCloseTo(27, 12);
  });

  it('bridges a gap of 48 hours', () => {
    const integral = integrateOverReadings(climateOf([0, 48]), 3, () => 1);
    expect(integralBetween(integral, 0, 2)).toBeCloseTo(2, 12);
  });

  it('is additive: splitting a stretch at any day changes nothing', () => {
    const hours = fc.uniqueArray(fc.double({ min: 0, max: 2400, noNaN: true }), { minLength: 1, maxLength: 60 });
    const day = fc.integer({ min: -20, max: 130 });
    fc.assert(
      fc.property(hours, fc.array(day, { minLength: 3, maxLength: 3 }), (times, days) => {
        const climate = climateOf([...times].sort((a, b) => a - b));
        const [from, split, to] = [...days].sort((a, b) => a - b) as [number, number, number];
        const integral = integrateOverReadings(climate, 0.7, (i) => 1 + (i % 5));
        const whole = integralBetween(integral, from, to);
        const parts = integralBetween(integral, from, split) + integralBetween(integral, split, to);
        expect(Math.abs(whole - parts)).toBeLessThan(1e-10);
        expect(whole).toBeGreaterThanOrEqual(0);
      }),
      { seed: 2, numRuns: 300 },
    );
  });

  it('agrees with the sum over each stretch between readings', () => {
    const hours = fc.uniqueArray(fc.double({ min: 0, max: 2400, noNaN: true }), { minLength: 2, maxLength: 60 });
    fc.assert(
      fc.property(hours, (times) => {
        const sorted = [...times].sort((a, b) => a - b);
        const rate = (i: number) => 1 + (i % 5);
        const climate = climateOf(sorted);
        let sum = 0.7 * (sorted[0] as number);
        for (let i = 1; i < sorted.length; i += 1) {
          const length = (sorted[i] as number) - (sorted[i - 1] as number);
          sum += length > 48 ? 0.7 * length : 0.5 * (rate(i - 1) + rate(i)) * length;
        }
        sum += 0.7 * (climate.endDay * 24 - (sorted.at(-1) as number));
        expect(
          Math.abs(integralBetween(integrateOverReadings(climate, 0.7, rate), 0, climate.endDay) - sum / 24),
        ).toBeLessThan(1e-9);
      }),
      { seed: 3, numRuns: 200 },
    );
  });

  it('refuses days that are not whole or run backwards, and rates below zero', () => {
    const integral = integrateOverReadings(climateOf([12]), 1, () => 1);
    expect(() => integralBetween(integral, 0.5, 2)).toThrow(RangeError);
    expect(() => integralBetween(integral, 3, 2)).toThrow(RangeError);
    expect(() => integrateOverReadings(climateOf([12]), 1, () => -1)).toThrow(RangeError);
    expect(() => integrateOverReadings(climateOf([12]), Number.NaN, () => 1)).toThrow(RangeError);
  });
});
