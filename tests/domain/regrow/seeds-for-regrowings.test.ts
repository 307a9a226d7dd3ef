import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitLot } from '@/lib/domain/longevity/lot-model';
import { seedsForRegrowings } from '@/lib/domain/regrow/seeds-for-regrowings';
import { seedsToSow, seedsToSowUncertain } from '@/lib/domain/regrow/seeds-to-sow';
import { normalCdf } from '@/lib/domain/statistics/normal-distribution';

const prior = { initial: { mean: 1.75, sd: 0.75 }, logRate: { mean: 0, sd: 0.5 } };
const tested = fitLot({ tests: [{ probitsLost: 0.5, germinated: 360, sown: 400 }], prior });
const lot = {
  today: '2026-11-25',
  sowingMonth: 4,
  posterior: tested,
  probitsLostNow: 0.5,
  probitsPerDay: 0.0005,
  plants: 40,
  emergence: 0.7,
  assurance: 0.95,
  regrowings: 2,
};

describe('seedsForRegrowings', () => {
  it('reckons each regrowing at the age that the seed has by its own sowing', () => {
    // To the first of April 2027 it is 127 days, to that of 2028 a leap year's 366 more.
    const at = (days: number) =>
      seedsToSowUncertain({ plants: 40, posterior: tested, probitsLost: 0.5 + 0.0005 * days, emergence: 0.7 });
    expect(seedsForRegrowings(lot)).toEqual([at(127), at(493)]);
    expect(at(493)).toBeGreaterThan(at(127));
  });

  it('agrees with the plain equation for a lot that is known all but exactly', () => {
    const known = fitLot({ tests: [], prior: { initial: { mean: 1.5, sd: 1e-4 }, logRate: { mean: 0, sd: 1e-4 } } });
    const [first, second] = seedsForRegrowings({ ...lot, posterior: known, probitsLostNow: 0, probitsPerDay: 0.001 });
    const plain = (days: number) => seedsToSow({ plants: 40, chancePerSeed: 0.7 * normalCdf(1.5 - 0.001 * days) });
    expect(Math.abs((first as number) - plain(127))).toBeLessThanOrEqual(1);
    expect(Math.abs((second as number) - plain(493))).toBeLessThanOrEqual(1);
  });

  it('asks for as many the second time where seed does not age, and says when no number is enough', () => {
    const [first, second] = seedsForRegrowings({ ...lot, probitsPerDay: 0 });
    expect(second).toBe(first);
    expect(seedsForRegrowings({ ...lot, probitsLostNow: 12 })[0]).toBe(Number.POSITIVE_INFINITY);
  });

  it('never asks for fewer later, but for a seed or one in a hundred of rounding', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.003, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (rate, lost) => {
          const seeds = seedsForRegrowings({ ...lot, probitsPerDay: rate, probitsLostNow: lost, regrowings: 4 });
          for (let i = 1; i < seeds.length; i += 1) {
            const before = seeds[i - 1] as number;
            expect(seeds[i] as number).toBeGreaterThanOrEqual(Math.min(before - 1, before * 0.99));
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('refuses what is outside its range', () => {
    expect(() => seedsForRegrowings({ ...lot, regrowings: 0 })).toThrow(/regrowings must be an integer >= 1/);
    expect(() => seedsForRegrowings({ ...lot, probitsPerDay: -1 })).toThrow(/probitsPerDay/);
  });
});
