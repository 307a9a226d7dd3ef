import fc from 'fast-check';
import { expect, test } from 'vitest';
import { roundedPercentages } from '../../../lib/domain/germination/rounded-percentages';
import { SEED_CLASSES } from '../../../lib/domain/germination/seed-classes';

const count = fc.integer({ min: 0, max: 400 });
const counts = fc
  .record({ normal: count, abnormal: count, hard: count, fresh: count, dead: count })
  .filter((c) => SEED_CLASSES.some((seedClass) => c[seedClass] > 0));

test('adds to 100, each within one point of its exact value, normal to the nearest', () => {
  fc.assert(
    fc.property(counts, (counts) => {
      const seeds = SEED_CLASSES.reduce((sum, seedClass) => sum + counts[seedClass], 0);
      const rounded = roundedPercentages(counts);
      expect(SEED_CLASSES.reduce((sum, seedClass) => sum + rounded[seedClass], 0)).toBe(100);
      for (const seedClass of SEED_CLASSES) {
        expect(Number.isInteger(rounded[seedClass])).toBe(true);
        expect(Math.abs(rounded[seedClass] - (100 * counts[seedClass]) / seeds)).toBeLessThan(1);
      }
      expect(Math.abs(rounded.normal - (100 * counts.normal) / seeds)).toBeLessThanOrEqual(0.5 + 1e-12);
    }),
    { seed: 20261125, numRuns: 1000 },
  );
});

test('a half of normal goes up, and the missing point to the largest fraction of the rest', () => {
  // 86.5, 4.75, 2.25, 0, 6.5 %: normal 87, whole parts 4, 2, 0, 6 leave 1 missing, which abnormal gets.
  expect(roundedPercentages({ normal: 346, abnormal: 19, hard: 9, fresh: 0, dead: 26 })).toEqual({
    normal: 87,
    abnormal: 5,
    hard: 2,
    fresh: 0,
    dead: 6,
  });
});

test('of equal fractions the earlier on the test sheet goes first', () => {
  // 80.25, 6.25, 6.25, 6.25, 1 %: whole parts 80, 6, 6, 6, 1 leave 1.
  expect(roundedPercentages({ normal: 321, abnormal: 25, hard: 25, fresh: 25, dead: 4 })).toEqual({
    normal: 80,
    abnormal: 7,
    hard: 6,
    fresh: 6,
    dead: 1,
  });
});

test('a class without seeds never gets a percent', () => {
  expect(roundedPercentages({ normal: 1, abnormal: 1, hard: 0, fresh: 0, dead: 1 })).toEqual({
    normal: 33,
    abnormal: 34,
    hard: 0,
    fresh: 0,
    dead: 33,
  });
});

test('refuses an empty count', () => {
  expect(() => roundedPercentages({ normal: 0, abnormal: 0, hard: 0, fresh: 0, dead: 0 })).toThrow(RangeError);
});
