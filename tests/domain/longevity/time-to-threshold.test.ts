import { describe, expect, it } from 'vitest';
import { fitLot, probabilityBelow, viabilityAt } from '../../../lib/domain/longevity/lot-model';
import { daysUntilChanceBelow, timeToThreshold } from '../../../lib/domain/longevity/time-to-threshold';

const prior = { initial: { mean: 1.75, sd: 0.75 }, logRate: { mean: 0, sd: 0.5 } };
const posterior = fitLot({
  tests: [
    { probitsLost: 0, germinated: 96, sown: 100 },
    { probitsLost: 0.3, germinated: 92, sown: 100 },
  ],
  prior,
});
const question = { posterior, probitsLostNow: 0.1, ratePerDay: 0.0005, threshold: 0.8 };

describe('timeToThreshold', () => {
  it('has the median viability at the threshold on the median date', () => {
    const { median } = timeToThreshold(question);
    if (median === null) throw new Error('beyond the horizon');
    expect(viabilityAt(posterior, { probitsLost: 0.1 + median * 0.0005 }).median).toBeCloseTo(0.8, 4);
  });

  it('has one chance in ten of being below on the day a test is due', () => {
    const { testDue } = timeToThreshold(question);
    if (testDue === null) throw new Error('beyond the horizon');
    expect(probabilityBelow(posterior, { probitsLost: 0.1 + testDue * 0.0005, threshold: 0.8 })).toBeCloseTo(0.1, 4);
  });

  it('orders its dates', () => {
    const { earliest, testDue, median, latest } = timeToThreshold(question);
    expect(earliest).toBeLessThan(testDue as number);
    expect(testDue).toBeLessThan(median as number);
    expect(median).toBeLessThan(latest as number);
  });

  it('halves the time when the store ages seed twice as fast', () => {
    const slow = daysUntilChanceBelow({ ...question, chance: 0.5 }) as number;
    const fast = daysUntilChanceBelow({ ...question, ratePerDay: 0.001, chance: 0.5 }) as number;
    expect(Math.abs(slow / fast - 2)).toBeLessThan(1e-6);
  });

  it('gives no date beyond 200 years, nor for a store that does not age seed', () => {
    expect(timeToThreshold({ ...question, ratePerDay: 1e-9 })).toEqual({
      median: null,
      earliest: null,
      latest: null,
      testDue: null,
    });
    expect(timeToThreshold({ ...question, ratePerDay: 0 }).median).toBeNull();
  });

  it('gives today for a lot that has passed the threshold, in any store', () => {
    expect(timeToThreshold({ ...question, probitsLostNow: 20 }).median).toBe(0);
    expect(timeToThreshold({ ...question, probitsLostNow: 20, ratePerDay: 0 }).median).toBe(0);
  });

  it('refuses ageing below zero and a horizon of nothing', () => {
    expect(() => timeToThreshold({ ...question, probitsLostNow: -1 })).toThrow(RangeError);
    expect(() => timeToThreshold({ ...question, ratePerDay: Number.NaN })).toThrow(RangeError);
    expect(() => daysUntilChanceBelow({ ...question, chance: 0.5, horizonDays: 0 })).toThrow(RangeError);
  });
});
