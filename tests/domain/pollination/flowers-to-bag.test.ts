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

  it('count a chance equal to the assurance as enough: two flowers for three in four', () => {
    const half = { success: 0.5, seedsPerFruit: 1, seedsPerFruitSd: 0, seeds: 1, plants: 1, assurance: 0.75 };
    expect(flowersToBag(half)).toEqual({ forSeeds: 2, perPlantForAll: 2, perPlant: 2 });
  });

  it.each([
    { wrong: { success: 0 }, named: /success/ },
    { wrong: { success: 1.1 }, named: /success/ },
    { wrong: { seedsPerFruit: 0 }, named: /seedsPerFruit must/ },
    { wrong: { seedsPerFruit: Number.POSITIVE_INFINITY }, named: /seedsPerFruit must/ },
    { wrong: { seedsPerFruitSd: -1 }, named: /seedsPerFruitSd/ },
    { wrong: { seeds: 0 }, named: /seeds must/ },
    { wrong: { plants: 0 }, named: /plants/ },
    { wrong: { plants: 1.5 }, named: /plants/ },
    { wrong: { assurance: 1 }, named: /assurance/ },
    { wrong: { assurance: 0 }, named: /assurance/ },
  ])('refuse $wrong', ({ wrong, named }) => {
    const right = { seeds: 10, plants: 2, success: 0.5, seedsPerFruit: 9, seedsPerFruitSd: 2, assurance: 0.95 };
    expect(() => flowersToBag({ ...right, ...wrong })).toThrow(named);
  });

  it.each([-1, 2.5])('refuse %f flowers', (flowers) => {
    const fruit = { success: 0.5, seedsPerFruit: 9, seedsPerFruitSd: 2, seeds: 3 };
    expect(() => chanceOfSeeds({ ...fruit, flowers })).toThrow(/flowers must/);
    expect(chanceOfSeeds({ ...fruit, flowers: 0 })).toBe(0);
  });

  it('count fruits that hold exactly the seed wanted as enough', () => {
    expect(chanceOfSeeds({ flowers: 2, seeds: 20, success: 1, seedsPerFruit: 10, seedsPerFruitSd: 0 })).toBe(1);
    expect(chanceOfSeeds({ flowers: 2, seeds: 21, success: 1, seedsPerFruit: 10, seedsPerFruitSd: 0 })).toBe(0);
  });
});
