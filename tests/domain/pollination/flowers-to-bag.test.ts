import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chanceOfSeeds, flowersToBag } from '../../../lib/domain/pollination/flowers-to-bag';
import { goldenRows } from '../../support/golden-table';

interface Fruit {
  success: number;
  seedsPerFruit: number;
  seedsPerFruitSd: number;
}

describe('chance that bagged flowers give seed enough', () => {
  it('equals R', () => {
    for (const row of goldenRows<Fruit & { flowers: number; seeds: number; chance: number }>(
      'flowers-to-bag',
      'chances',
    )) {
      expect(Math.abs(chanceOfSeeds(row) - row.chance), JSON.stringify(row)).toBeLessThan(1e-12);
    }
  });

  it('grows with every flower and falls with every seed wanted', () => {
    const fruit = fc.record({
      success: fc.double({ min: 0.05, max: 1, noNaN: true }),
      seedsPerFruit: fc.double({ min: 1, max: 80, noNaN: true }),
      seedsPerFruitSd: fc.double({ min: 0, max: 30, noNaN: true }),
    });
    fc.assert(
      fc.property(fruit, fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 900 }), (one, flowers, seeds) => {
        const here = chanceOfSeeds({ ...one, flowers, seeds });
        expect(chanceOfSeeds({ ...one, flowers: flowers + 1, seeds })).toBeGreaterThanOrEqual(here - 1e-12);
        expect(here).toBeLessThanOrEqual(1);
        expect(chanceOfSeeds({ ...one, flowers, seeds: seeds + 1 })).toBeLessThanOrEqual(here + 1e-12);
      }),
      { seed: 316 },
    );
  });
});

describe('flowers to bag', () => {
  it('are the fewest by R, in all and so that every plant bears', () => {
    type Row = Fruit & { seeds: number; assurance: number; plants: number; forSeeds: number; perPlantForAll: number };
    for (const row of goldenRows<Row>('flowers-to-bag', 'fewest')) {
      const found = flowersToBag(row);
      expect([found.forSeeds, found.perPlantForAll], JSON.stringify(row)).toEqual([row.forSeeds, row.perPlantForAll]);
    }
  });

  it('on each plant serve both aims', () => {
    const base = { success: 0.6, seedsPerFruit: 58, seedsPerFruitSd: 15, assurance: 0.95 };
    const seedsRule = flowersToBag({ ...base, seeds: 20_000, plants: 20 });
    expect(seedsRule.perPlant).toBe(Math.ceil(seedsRule.forSeeds / 20));
    const plantsRule = flowersToBag({ ...base, seeds: 100, plants: 20 });
    expect(plantsRule.perPlant).toBe(plantsRule.perPlantForAll);
    expect(plantsRule.perPlant).toBeGreaterThan(plantsRule.forSeeds / 20);
  });

  it('are Infinity where nobody could bag so many', () => {
    const hopeless = { success: 0.01, seedsPerFruit: 1, seedsPerFruitSd: 0, assurance: 0.95, plants: 1 };
    expect(flowersToBag({ ...hopeless, seeds: 1e6 }).forSeeds).toBe(Number.POSITIVE_INFINITY);
  });

  it.each([
    { success: 0 },
    { success: 1.1 },
    { seedsPerFruit: 0 },
    { seedsPerFruitSd: -1 },
    { seeds: 0 },
    { plants: 0 },
    { assurance: 1 },
  ])('refuse %o', (wrong) => {
    const right = { seeds: 10, plants: 2, success: 0.5, seedsPerFruit: 9, seedsPerFruitSd: 2, assurance: 0.95 };
    expect(() => flowersToBag({ ...right, ...wrong })).toThrow(RangeError);
  });
});
