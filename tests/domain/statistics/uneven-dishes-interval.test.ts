import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { betaBinomialLogPmf } from '../../../lib/domain/statistics/beta-binomial';
import { binomialInterval } from '../../../lib/domain/statistics/binomial-interval';
import { unevenDishesInterval, wilsonForAlikeSeeds } from '../../../lib/domain/statistics/uneven-dishes-interval';
import { unevenDishesLikelihood } from '../../../lib/domain/statistics/uneven-dishes-likelihood';
import { expectClose, goldenRows } from '../../support/golden-table';

const SEED = { seed: 20261125 };

interface Row {
  trials: number[];
  successes: number[];
  level: number;
  lower: number;
  upper: number;
  mean: number;
  correlation: number;
}

const dishesOf = ({ trials, successes }: { trials: number[]; successes: number[] }) =>
  trials.map((size, i) => ({ trials: size, successes: successes[i] ?? Number.NaN }));
const of = (size: number, successes: number[]) => successes.map((count) => ({ trials: size, successes: count }));

function found(dishes: { trials: number; successes: number }[], level?: number) {
  const interval = unevenDishesInterval(level === undefined ? { dishes } : { dishes, level });
  if (!interval.ok) throw new Error(`refused: ${interval.reason}`);
  return interval;
}

/** Tests of two to five dishes of up to 60 seeds, some but not all germinated. */
const someDishes = fc
  .array(
    fc
      .integer({ min: 2, max: 60 })
      .chain((trials) => fc.record({ trials: fc.constant(trials), successes: fc.integer({ min: 0, max: trials }) })),
    { minLength: 2, maxLength: 5 },
  )
  .filter((dishes) => dishes.some((d) => d.successes > 0) && dishes.some((d) => d.successes < d.trials));

describe('against R, which writes the likelihood with beta functions', () => {
  test('bounds, mean and correlation of even, uneven and unequal dishes, levels 0.5 to 0.999', () => {
    for (const row of goldenRows<Row>('uneven-dishes-interval', 'rows')) {
      const interval = found(dishesOf(row), row.level);
      expectClose(interval.lower, row.lower, 1e-8, { end: 'lower', ...row });
      expectClose(interval.upper, row.upper, 1e-8, { end: 'upper', ...row });
      // The place of a flat peak is known to the square root of what its height is known to.
      expectClose(interval.mean, row.mean, 1e-6, row);
      expect(Math.abs(interval.correlation - row.correlation), JSON.stringify(row)).toBeLessThan(1e-5);
    }
  });

  test('Wilson with effective numbers of seeds, from no likeness to all seeds of a dish alike', () => {
    for (const row of goldenRows<Row>('uneven-dishes-interval', 'alike')) {
      const interval = wilsonForAlikeSeeds({ dishes: dishesOf(row), correlation: row.correlation });
      expectClose(interval.lower, row.lower, 1e-9, row);
      expectClose(interval.upper, row.upper, 1e-12, row);
    }
  });
});

test('the likelihood is that of the beta-binomial but for a constant, at both ends of the correlation too', () => {
  const dishes = dishesOf({ trials: [25, 40, 1], successes: [20, 40, 0] });
  const likelihood = unevenDishesLikelihood(dishes);
  const direct = (mean: number, correlation: number) =>
    dishes.reduce((sum, dish) => sum + betaBinomialLogPmf({ ...dish, mean, correlation }), 0);
  const constant = direct(0.5, 0) - likelihood(0.5, 0.5, 0);
  for (const mean of [0.01, 0.5, 0.97]) {
    for (const correlation of [0, 1e-9, 0.01, 0.4, 0.999]) {
      expectClose(likelihood(mean, 1 - mean, correlation) + constant, direct(mean, correlation), 1e-11, {
        mean,
        correlation,
      });
    }
    expect(likelihood(mean, 1 - mean, 1)).toBe(Number.NEGATIVE_INFINITY);
  }
  // Dishes all or nothing, seeds of each wholly alike: two of three tosses.
  const tosses = unevenDishesLikelihood(dishesOf({ trials: [25, 40, 10], successes: [25, 40, 0] }));
  expectClose(tosses(0.6, 0.4, 1), Math.log(0.6 * 0.6 * 0.4), 1e-12, 'all or nothing');
});

test('four uneven dishes of one lot: wider than Wilson by far', () => {
  const interval = found(of(100, [90, 60, 94, 75]));
  const wilson = binomialInterval({ successes: 319, trials: 400 });
  expect(interval.lower).toBeLessThan(wilson.lower - 0.1);
  expect(interval.upper).toBeGreaterThan(wilson.upper + 0.05);
});

describe('laws', () => {
  test('bounds hold the best mean, and more confidence widens them', () => {
    fc.assert(
      fc.property(someDishes, fc.double({ min: 0.5, max: 0.98, noNaN: true }), (dishes, level) => {
        const narrow = found(dishes, level);
        const wide = found(dishes, level + 0.01);
        expect(narrow.lower).toBeLessThan(narrow.mean);
        expect(narrow.mean).toBeLessThan(narrow.upper);
        expect(wide.lower).toBeLessThan(narrow.lower);
        expect(wide.upper).toBeGreaterThan(narrow.upper);
      }),
      { ...SEED, numRuns: 40 },
    );
  });

  test('counting the seeds that failed mirrors the interval', () => {
    fc.assert(
      fc.property(someDishes, (dishes) => {
        const interval = found(dishes);
        const mirrored = found(dishes.map(({ trials, successes }) => ({ trials, successes: trials - successes })));
        expectClose(mirrored.lower, 1 - interval.upper, 1e-7, dishes);
        expectClose(1 - mirrored.upper, interval.lower, 1e-7, dishes);
      }),
      { ...SEED, numRuns: 40 },
    );
  });

  test('the order of the dishes does not matter', () => {
    fc.assert(
      fc.property(someDishes, (dishes) => {
        const reversed = found([...dishes].reverse());
        expectClose(reversed.lower, found(dishes).lower, 1e-9, dishes);
      }),
      { ...SEED, numRuns: 25 },
    );
  });

  test('with seeds not alike at all, splitting them into dishes changes nothing: it is Wilson', () => {
    fc.assert(
      fc.property(someDishes, (dishes) => {
        const successes = dishes.reduce((sum, dish) => sum + dish.successes, 0);
        const trials = dishes.reduce((sum, dish) => sum + dish.trials, 0);
        expect(wilsonForAlikeSeeds({ dishes, correlation: 0 })).toEqual(binomialInterval({ successes, trials }));
      }),
      SEED,
    );
  });

  test('the more alike the seeds of a dish, the wider the interval', () => {
    fc.assert(
      fc.property(someDishes, fc.double({ min: 0, max: 0.9, noNaN: true }), (dishes, correlation) => {
        const width = (rho: number) => {
          const { lower, upper } = wilsonForAlikeSeeds({ dishes, correlation: rho });
          return upper - lower;
        };
        expect(width(correlation + 0.1)).toBeGreaterThan(width(correlation));
      }),
      SEED,
    );
  });
});

test('seeds wholly alike count as one a dish', () => {
  const { lower, upper } = wilsonForAlikeSeeds({ dishes: of(50, [50, 0, 50]), correlation: 1 });
  const three = binomialInterval({ successes: 2, trials: 3 });
  expectClose(lower, three.lower, 1e-14, 'three dishes');
  expectClose(upper, three.upper, 1e-14, 'three dishes');
});

test('a known correlation needs one dish only, and holds at both ends', () => {
  const all = wilsonForAlikeSeeds({ dishes: of(50, [50]), correlation: 0.02 });
  expect(all.upper).toBe(1);
  expect(all.lower).toBeLessThan(binomialInterval({ successes: 50, trials: 50 }).lower);
  expect(wilsonForAlikeSeeds({ dishes: of(50, [0]), correlation: 0.02 }).lower).toBe(0);
});

test('refuses, with the reason, where dishes cannot show how uneven they are', () => {
  expect(unevenDishesInterval({ dishes: of(100, [88]) })).toEqual({ ok: false, reason: 'one-replicate' });
  expect(unevenDishesInterval({ dishes: of(50, [50, 50]) })).toEqual({ ok: false, reason: 'nothing-differs' });
  expect(unevenDishesInterval({ dishes: of(50, [0, 0]) })).toEqual({ ok: false, reason: 'nothing-differs' });
  expect(unevenDishesInterval({ dishes: of(1, [0, 1, 1]) })).toEqual({ ok: false, reason: 'one-seed-a-dish' });
  expect(unevenDishesInterval({ dishes: of(2001, [1800, 1700]) })).toEqual({ ok: false, reason: 'too-many-seeds' });
  expect(unevenDishesInterval({ dishes: of(2000, [1800, 1700]) }).ok).toBe(true);
});

test('throws on what is no count, no correlation or no level', () => {
  expect(() => unevenDishesInterval({ dishes: [] })).toThrow(RangeError);
  expect(() => unevenDishesInterval({ dishes: of(10, [11, 2]) })).toThrow(/successes/);
  expect(() => unevenDishesInterval({ dishes: of(0, [0, 0]) })).toThrow(/trials/);
  expect(() => unevenDishesInterval({ dishes: of(10, [1, 2]), level: 95 })).toThrow(/level/);
  expect(() => wilsonForAlikeSeeds({ dishes: of(10, [1, 2]), correlation: 1.1 })).toThrow(/correlation/);
});
