import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chanceOfAtLeast } from '../../../lib/domain/regrow/raising-chance';
import { seedsToSow } from '../../../lib/domain/regrow/seeds-to-sow';
import { binomialUpperTail } from '../../../lib/domain/statistics/binomial';
import golden from '../../golden/seeds-to-sow.json';

describe('seedsToSow', () => {
  test('agrees with R to the last seed: 1 to 5000 plants, chances 1e-4 to 1, assurance 0.05 to 0.9999', () => {
    expect(golden.rows.length).toBe(720);
    for (const row of golden.rows) {
      const { plants, chancePerSeed, assurance } = row;
      expect(seedsToSow({ plants, chancePerSeed, assurance }), JSON.stringify(row)).toBe(row.seeds);
    }
  });

  test('the chance it reaches agrees with R within 1e-12', () => {
    for (const { plants, seeds, chancePerSeed, chance } of golden.rows) {
      const ours = chanceOfAtLeast(plants, seeds, chancePerSeed);
      expect(Math.abs(ours - chance), JSON.stringify({ plants, seeds, chancePerSeed, chance, ours })).toBeLessThan(
        1e-12,
      );
    }
  });

  test('tails that are skipped as certain or impossible are so to 1e-12', () => {
    for (const plants of [1, 2, 7, 40, 300, 5000]) {
      for (const chancePerSeed of [1e-4, 0.01, 0.2, 0.6, 0.95, 0.999]) {
        for (let deviations = -14; deviations <= 14; deviations += 0.5) {
          const expected = Math.max(plants + deviations * Math.sqrt(plants), 0.01);
          const trials = Math.max(plants, Math.round(expected / chancePerSeed));
          const exact = binomialUpperTail({ successes: plants, trials, probability: chancePerSeed });
          const ours = chanceOfAtLeast(plants, trials, chancePerSeed);
          expect(Math.abs(ours - exact), JSON.stringify({ plants, chancePerSeed, trials })).toBeLessThan(1e-12);
        }
      }
    }
  });

  test('one plant needs the seeds that make "none came up" rarer than 1 - assurance', () => {
    // 0.5^4 = 0.0625 > 0.05 >= 0.5^5
    expect(seedsToSow({ plants: 1, chancePerSeed: 0.5 })).toBe(5);
  });

  test('an assurance that is met exactly is enough', () => {
    // P(Bin(2, 0.5) >= 1) = 0.75 exactly.
    expect(seedsToSow({ plants: 1, chancePerSeed: 0.5, assurance: 0.75 })).toBe(2);
  });

  test('seeds that cannot fail need no spare', () => {
    expect(seedsToSow({ plants: 40, chancePerSeed: 1 })).toBe(40);
  });

  test('the answer is enough and one seed less is not', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.double({ min: 0.005, max: 0.999, noNaN: true }),
        fc.double({ min: 0.1, max: 0.999, noNaN: true }),
        (plants, chancePerSeed, assurance) => {
          const seeds = seedsToSow({ plants, chancePerSeed, assurance });
          expect(chanceOfAtLeast(plants, seeds, chancePerSeed)).toBeGreaterThanOrEqual(assurance);
          expect(chanceOfAtLeast(plants, seeds - 1, chancePerSeed)).toBeLessThan(assurance);
        },
      ),
      { seed: 20260114 },
    );
  });

  test.each([
    [{ plants: 0, chancePerSeed: 0.5 }, /plants.*got 0/],
    [{ plants: 2.5, chancePerSeed: 0.5 }, /plants.*2\.5/],
    [{ plants: 10, chancePerSeed: 0 }, /chancePerSeed.*got 0/],
    [{ plants: 10, chancePerSeed: 85 }, /chancePerSeed.*85/],
    [{ plants: 10, chancePerSeed: Number.NaN }, /chancePerSeed/],
    [{ plants: 10, chancePerSeed: 0.5, assurance: 1 }, /assurance.*got 1/],
    [{ plants: 10, chancePerSeed: 0.5, assurance: 0 }, /assurance/],
    [{ plants: 10, chancePerSeed: 0.5, assurance: 95 }, /assurance.*95/],
  ])('refuses %o', (input, message) => {
    expect(() => seedsToSow(input)).toThrow(message);
    expect(() => seedsToSow(input)).toThrow(RangeError);
  });
});
