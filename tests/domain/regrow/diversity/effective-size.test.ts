import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { effectiveParents, parentsBySeed } from '../../../../lib/domain/regrow/diversity/effective-size';
import { expectClose, goldenRows } from '../../../support/golden-table';

const share = fc.double({ min: 0.01, max: 100, noNaN: true });
const parents = fc.array(fc.record({ seed: share, pollen: share }), { minLength: 1, maxLength: 40 });

describe('effective number of parents', () => {
  it('is what R draws: two gametes of the lot are one parental copy with chance 1 / (2 Ne)', () => {
    type Row = { name: string; alike: number; seed: number[]; pollen: number[] };
    const draws = 4e6;
    for (const { alike, seed, pollen, name } of goldenRows<Row>('diversity', 'loss')) {
      const chance =
        1 / (2 * effectiveParents(seed.map((part, index) => ({ seed: part, pollen: pollen[index] ?? 0 }))));
      expect(Math.abs(chance - alike), name).toBeLessThan(4 * Math.sqrt((chance * (1 - chance)) / draws));
    }
  });

  // Wright 1931, Genetics 16:97-159 (from memory).
  it.each([
    [10, 10],
    [2, 18],
    [1, 99],
  ])('of %i pollen and %i seed plants is 4 Nm Nf / (Nm + Nf)', (males, females) => {
    const pollen = Array.from({ length: males }, () => ({ seed: 0, pollen: 1 }));
    const seed = Array.from({ length: females }, () => ({ seed: 1, pollen: 0 }));
    expectClose(effectiveParents([...pollen, ...seed]), (4 * males * females) / (males + females), 1e-12, [
      males,
      females,
    ]);
  });

  it('is at most the number of plants, and all of them when they share alike', () => {
    fc.assert(
      fc.property(parents, (plants) => {
        const size = effectiveParents(plants);
        expect(size).toBeGreaterThanOrEqual(1 - 1e-12);
        expect(size).toBeLessThanOrEqual(plants.length * (1 + 1e-12));
        expectClose(
          effectiveParents(plants.map(() => ({ seed: 3, pollen: 0.2 }))),
          plants.length,
          1e-12,
          plants.length,
        );
      }),
      { seed: 313 },
    );
  });

  it('does not depend on units', () => {
    fc.assert(
      fc.property(parents, share, share, (plants, a, b) => {
        const scaled = plants.map(({ seed, pollen }) => ({ seed: seed * a, pollen: pollen * b }));
        expectClose(effectiveParents(scaled), effectiveParents(plants), 1e-12, plants);
      }),
      { seed: 314 },
    );
  });

  it('grows when plants that only shed pollen are added, and is smaller when the same plants self', () => {
    const seedByPlant = [60, 20, 10, 5, 5];
    const crossing = effectiveParents(parentsBySeed({ seedByPlant, pollination: 'crossing' }));
    const more = effectiveParents(parentsBySeed({ seedByPlant, pollination: 'crossing', pollenPlants: 20 }));
    const selfing = effectiveParents(parentsBySeed({ seedByPlant, pollination: 'selfing' }));
    expect(more).toBeGreaterThan(crossing);
    expect(selfing).toBeLessThan(crossing);
    // By hand: sum of squares of 0.6, 0.2, 0.1, 0.05, 0.05.
    expectClose(selfing, 1 / 0.415, 1e-12, seedByPlant);
  });

  it.each([
    {
      plants: [
        { seed: -1, pollen: 2 },
        { seed: 3, pollen: 2 },
      ],
      named: /shares must be finite/,
    },
    {
      plants: [
        { seed: 1, pollen: -2 },
        { seed: 3, pollen: 5 },
      ],
      named: /shares must be finite/,
    },
    { plants: [{ seed: Number.POSITIVE_INFINITY, pollen: 2 }], named: /shares must be finite/ },
    { plants: [{ seed: 2, pollen: Number.NaN }], named: /shares must be finite/ },
    { plants: [{ seed: 1, pollen: 0 }], named: /somebody must give/ },
    { plants: [{ seed: 0, pollen: 1 }], named: /somebody must give/ },
    { plants: [], named: /somebody must give/ },
  ])('refuses $plants', ({ plants, named }) => {
    expect(() => effectiveParents(plants)).toThrow(named);
  });

  it.each([0.5, -1])('refuses %f pollen plants', (pollenPlants) => {
    expect(() => parentsBySeed({ seedByPlant: [1], pollination: 'crossing', pollenPlants })).toThrow(/pollenPlants/);
  });
});
