import fc from 'fast-check';
import { expect, test } from 'vitest';
import { operatingCharacteristic } from '../../../../lib/domain/germination/sample-size/operating-characteristic';
import { expectClose, goldenRows } from '../../../support/golden-table';
import { anyPlan } from './any-plan';
import { goldenPlan } from './golden-plans';

const SEED = { seed: 20261125 };
/** R's powers lose the double's range below this. */
const SMALLEST_COMPARED = 1e-290;

interface Row {
  plan: string;
  germination: number;
  dishSize: number;
  correlation: number;
  regrow: number[];
  keep: number[];
  goOn: number[];
  expectedSeeds: number;
  bias: number;
}

test.each(['rows', 'uneven'])('every chance at every look agrees with R, to a relative 1e-10 (%s)', (part) => {
  for (const row of goldenRows<Row>('sequential-plan', part)) {
    const { plan, germination, dishSize, correlation } = row;
    const found = operatingCharacteristic(goldenPlan(plan), germination, { dishSize, correlation });
    for (const [index, look] of found.looks.entries()) {
      for (const kind of ['regrow', 'keep', 'goOn'] as const) {
        const expected = row[kind][index] ?? Number.NaN;
        const inputs = { plan, germination, dishSize, correlation, kind, look: look.seedsTested };
        if (expected > SMALLEST_COMPARED || expected === 0) {
          if (expected === 0) expect(look[kind], JSON.stringify(inputs)).toBeLessThanOrEqual(SMALLEST_COMPARED);
          else expectClose(look[kind], expected, 1e-10, inputs);
        }
      }
    }
    expectClose(found.expectedSeeds, row.expectedSeeds, 1e-12, { plan, germination });
    expect(Math.abs(found.bias - row.bias), JSON.stringify({ plan, germination })).toBeLessThanOrEqual(1e-12);
  }
});

test('a table of R holds chances below 1e-12, so that tails are compared and not only middles', () => {
  const chances = goldenRows<Row>('sequential-plan', 'rows').flatMap(({ regrow, keep }) => [...regrow, ...keep]);
  expect(chances.filter((chance) => chance > SMALLEST_COMPARED && chance < 1e-12).length).toBeGreaterThan(100);
});

const anyGermination = fc.oneof(fc.constantFrom(0, 1), fc.double({ min: 0, max: 1, noNaN: true }));
const anyDishes = fc.record({
  dishSize: fc.integer({ min: 1, max: 12 }),
  correlation: fc.constantFrom(0, 0.01, 0.2),
});

test('regrow, keep and undecided add to 1, and so do the chances of each number of seeds used', () => {
  fc.assert(
    fc.property(anyPlan, anyGermination, anyDishes, (plan, germination, dishes) => {
      const found = operatingCharacteristic(plan, germination, dishes);
      expect(found.regrow + found.keep + found.undecided).toBeCloseTo(1, 11);
      expect(found.seedsUsed.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 11);
      let before = 1;
      for (const { regrow, keep, goOn } of found.looks) {
        expect(regrow + keep + goOn).toBeCloseTo(before, 11);
        before = goOn;
      }
    }),
    SEED,
  );
});

test('a better lot is kept at least as often and regrown at most as often', () => {
  fc.assert(
    fc.property(anyPlan, anyGermination, anyGermination, (plan, first, second) => {
      const poorer = operatingCharacteristic(plan, Math.min(first, second));
      const better = operatingCharacteristic(plan, Math.max(first, second));
      expect(better.keep).toBeGreaterThanOrEqual(poorer.keep - 1e-12);
      expect(better.regrow).toBeLessThanOrEqual(poorer.regrow + 1e-12);
    }),
    SEED,
  );
});

test('no fewer seeds than the first group and no more than all are used on average', () => {
  fc.assert(
    fc.property(anyPlan, anyGermination, (plan, germination) => {
      const { expectedSeeds } = operatingCharacteristic(plan, germination);
      expect(expectedSeeds).toBeGreaterThanOrEqual((plan.looks[0]?.seedsTested ?? 0) * (1 - 1e-12));
      expect(expectedSeeds).toBeLessThanOrEqual((plan.looks.at(-1)?.seedsTested ?? 0) * (1 + 1e-12));
    }),
    SEED,
  );
});

test('counting dead seed instead of live swaps keep and regrow', () => {
  fc.assert(
    fc.property(anyPlan, anyGermination, (plan, germination) => {
      const mirrored = {
        looks: plan.looks.map(({ seedsTested, regrowAtMost, keepAtLeast }) => ({
          seedsTested,
          regrowAtMost: keepAtLeast === null ? null : seedsTested - keepAtLeast,
          keepAtLeast: regrowAtMost === null ? null : seedsTested - regrowAtMost,
        })),
      };
      const found = operatingCharacteristic(plan, germination);
      const swapped = operatingCharacteristic(mirrored, 1 - germination);
      expect(swapped.keep).toBeCloseTo(found.regrow, 11);
      expect(swapped.expectedSeeds).toBeCloseTo(found.expectedSeeds, 9);
      expect(swapped.bias).toBeCloseTo(-found.bias, 11);
    }),
    SEED,
  );
});

test('a look that never stops changes nothing but the seeds counted at it', () => {
  const plan = goldenPlan('ownFive');
  const withIdleLook = {
    looks: [{ seedsTested: 13, regrowAtMost: null, keepAtLeast: null }, ...plan.looks],
  };
  for (const germination of [0.3, 0.85, 0.99]) {
    const { looks: _, ...bare } = operatingCharacteristic(plan, germination);
    const { looks: __, ...idle } = operatingCharacteristic(withIdleLook, germination);
    expect(idle.keep).toBeCloseTo(bare.keep, 12);
    expect(idle.expectedSeeds).toBeCloseTo(bare.expectedSeeds, 9);
    expect(idle.seedsUsed.map(({ seeds }) => seeds)).toEqual(bare.seedsUsed.map(({ seeds }) => seeds));
  }
});

test('a lot of which nothing or everything germinates is decided for certain, without bias', () => {
  const plan = goldenPlan('published');
  expect(operatingCharacteristic(plan, 0)).toMatchObject({ regrow: 1, keep: 0, expectedSeeds: 40, bias: 0 });
  // Kept at 80: the printed plan never keeps at the first look.
  expect(operatingCharacteristic(plan, 1)).toMatchObject({ regrow: 0, keep: 1, expectedSeeds: 80, bias: 0 });
});

test('refuses a germination outside 0 to 1 and a plan out of order', () => {
  const plan = goldenPlan('published');
  for (const germination of [-0.01, 1.01, Number.NaN]) {
    expect(() => operatingCharacteristic(plan, germination)).toThrow(/operatingCharacteristic: germination/);
  }
  expect(() => operatingCharacteristic({ looks: [] }, 0.5)).toThrow(RangeError);
  expect(() => operatingCharacteristic({ looks: [...plan.looks].reverse() }, 0.5)).toThrow(RangeError);
  expect(() => operatingCharacteristic(plan, 0.5, { dishSize: 40, correlation: 1 })).toThrow(RangeError);
  expect(() => operatingCharacteristic(plan, 0.5, { dishSize: 0, correlation: 0.1 })).toThrow(RangeError);
});
