import fc from 'fast-check';
import { expect, test } from 'vitest';
import { seedsFromWeight, thousandSeedWeightFromCount, weightFromSeeds } from '../../../lib/domain/stock/seed-count';

test.each([
  // Seeds per gram: 7 CFR 201.46 Table 1 (okra 19, tomato 405, carrot 825, onion 340).
  ['okra', 19],
  ['tomato', 405],
  ['carrot', 825],
  ['onion', 340],
])('one gram of %s holds %d seeds', (_crop, seedsPerGram) => {
  expect(seedsFromWeight({ weightG: 1, thousandSeedWeightG: 1000 / seedsPerGram })).toBe(seedsPerGram);
});

test('okra at 19 seeds a gram weighs 52.6 g per thousand', () => {
  expect(thousandSeedWeightFromCount({ seeds: 19, weightG: 1 })).toBeCloseTo(52.6, 1);
});

test('weighing counted seeds and counting weighed seeds undo each other', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 1_000_000 }),
      fc.double({ min: 0.001, max: 3000, noNaN: true }),
      (seeds, tsw) => {
        const weightG = weightFromSeeds({ seeds, thousandSeedWeightG: tsw });
        expect(seedsFromWeight({ weightG, thousandSeedWeightG: tsw })).toBe(seeds);
      },
    ),
    { seed: 20260112 },
  );
});

test('refuses weights, counts and thousand-seed weights outside their range', () => {
  expect(() => seedsFromWeight({ weightG: -1, thousandSeedWeightG: 4 })).toThrow(/weightG.*-1/);
  expect(() => seedsFromWeight({ weightG: 1, thousandSeedWeightG: 0 })).toThrow(/seedsFromWeight: thousandSeedWeightG/);
  expect(() => weightFromSeeds({ seeds: 1.5, thousandSeedWeightG: 4 })).toThrow(/seeds.*1\.5/);
  expect(() => thousandSeedWeightFromCount({ seeds: 0, weightG: 1 })).toThrow(/seeds/);
  expect(() => thousandSeedWeightFromCount({ seeds: 10, weightG: 0 })).toThrow(/weightG/);
});
