import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planCounts } from '../../../../lib/domain/longevity/storage-experiment/plan-counts';
import { normalQuantile } from '../../../../lib/domain/statistics/normal-distribution';

// At 10 % and 0 °C sigma is 10^(5 - 3) = 100 days.
const CONSTANTS = { KE: 5, CW: 3, CH: 0.033, CQ: 0.0005 };
const AT_100_DAYS = { moisturePercent: 10, temperatureC: 0 };
const plan = (change: Partial<Parameters<typeof planCounts>[0]> = {}) =>
  planCounts({
    ...{ constants: CONSTANTS, condition: AT_100_DAYS, initialGermination: 0.9772498680518208 },
    ...{ counts: 5, longestDays: 1000, ...change },
  });

test('two probits above the middle are followed down to one below it, evenly', () => {
  const { counts, sigmaDays, isCutShort, losesTooLittle } = plan();
  expect(sigmaDays).toBeCloseTo(100, 9);
  expect(counts.map((count) => count.days)).toEqual([0, 60, 120, 180, 240, 300]);
  expect(counts[0]?.expectedGermination).toBeCloseTo(0.97725, 5);
  expect(counts.at(-1)?.expectedGermination).toBeCloseTo(0.158655, 6);
  expect([isCutShort, losesTooLittle]).toEqual([false, false]);
});

test('nobody waits longer than they said, and too little lost is said', () => {
  expect(plan({ longestDays: 299 })).toMatchObject({ isCutShort: true, losesTooLittle: false });
  expect(plan({ longestDays: 50 })).toMatchObject({ isCutShort: true, losesTooLittle: false });
  expect(plan({ longestDays: 49 })).toMatchObject({ isCutShort: true, losesTooLittle: true });
  expect(plan({ longestDays: 49 }).counts.at(-1)?.days).toBe(49);
});

test('counts that fall on one day are one', () => {
  expect(plan({ longestDays: 2 }).counts.map((count) => count.days)).toEqual([0, 1, 2]);
});

test('seed that begins low is still followed through one probit', () => {
  expect(plan({ initialGermination: 0.05 }).counts.at(-1)?.days).toBe(100);
});

test('days rise, expectations fall, and every plan begins before storage', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.02, max: 0.999, noNaN: true }),
      fc.integer({ min: 1, max: 20 }),
      fc.integer({ min: 1, max: 5000 }),
      (initialGermination, counts, longestDays) => {
        const days = plan({ initialGermination, counts, longestDays }).counts;
        expect(days[0]?.days).toBe(0);
        for (let i = 1; i < days.length; i++) {
          expect(days[i]?.days as number).toBeGreaterThan(days[i - 1]?.days as number);
          expect(days[i]?.expectedGermination as number).toBeLessThan(days[i - 1]?.expectedGermination as number);
        }
        expect(days.at(-1)?.days as number).toBeLessThanOrEqual(longestDays);
        expect(normalQuantile(days[0]?.expectedGermination as number)).toBeCloseTo(
          normalQuantile(initialGermination),
          9,
        );
      },
    ),
    { seed: 20261125 },
  );
});

test('refuses what cannot be planned, by name', () => {
  expect(() => plan({ initialGermination: 1 })).toThrow('planCounts: initialGermination');
  expect(() => plan({ counts: 0 })).toThrow('planCounts: counts');
  expect(() => plan({ longestDays: 0 })).toThrow('planCounts: longestDays');
});
