import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { binomialInterval, type IntervalMethod } from '../../../lib/domain/statistics/binomial-interval';
import { expectClose, goldenRows } from '../../support/golden-table';

const TOLERANCE = 1e-12;
const SEED = { seed: 20261125 };
const METHODS: IntervalMethod[] = ['wilson', 'exact', 'jeffreys'];

/** Counts as large as a seed test or a pooled history of them gets. */
const counts = fc
  .integer({ min: 1, max: 2000 })
  .chain((trials) => fc.record({ trials: fc.constant(trials), successes: fc.integer({ min: 0, max: trials }) }));
const method = fc.constantFrom(...METHODS);
const level = fc.double({ min: 0.5, max: 0.999, noNaN: true });

interface Row {
  successes: number;
  trials: number;
  level: number;
  wilsonLower: number;
  wilsonUpper: number;
  exactLower: number;
  exactUpper: number;
  jeffreysLower: number;
  jeffreysUpper: number;
}

describe('against R, from 1 seed to 100 000, with both ends', () => {
  const rows = goldenRows<Row>('binomial-interval', 'intervals');
  test.each(METHODS)('%s', (name) => {
    for (const row of rows) {
      const { successes, trials, level } = row;
      const interval = binomialInterval({ successes, trials, level, method: name });
      expectClose(interval.lower, row[`${name}Lower`], TOLERANCE, { end: 'lower', ...row });
      expectClose(interval.upper, row[`${name}Upper`], TOLERANCE, { end: 'upper', ...row });
    }
  });
});

test('95 % intervals of common tests, to four decimals', () => {
  // Worked out apart from this code with R binom.test and prop.test, and rounded: [germinated, sown, exact, Wilson].
  const table: [number, number, [number, number], [number, number]][] = [
    [180, 200, [0.8498, 0.9378], [0.8506, 0.9343]],
    [360, 400, [0.8663, 0.9276], [0.8667, 0.9257]],
    [170, 200, [0.7928, 0.8965], [0.7939, 0.8929]],
    [88, 100, [0.7998, 0.9364], [0.8019, 0.93]],
    [45, 50, [0.7819, 0.9667], [0.7864, 0.9565]],
    [34, 40, [0.7016, 0.9429], [0.7093, 0.9294]],
    [50, 50, [0.9289, 1], [0.9287, 1]],
    [0, 50, [0, 0.0711], [0, 0.0713]],
  ];
  for (const [successes, trials, exact, wilson] of table) {
    const byExact = binomialInterval({ successes, trials, method: 'exact' });
    const byWilson = binomialInterval({ successes, trials });
    for (const [actual, expected] of [
      [byExact.lower, exact[0]],
      [byExact.upper, exact[1]],
      [byWilson.lower, wilson[0]],
      [byWilson.upper, wilson[1]],
    ] as const) {
      expect(Math.abs(actual - expected), `${successes}/${trials}: ${actual}`).toBeLessThanOrEqual(0.50001e-4);
    }
  }
});

test('the answer names its level and method, by default 95 % and Wilson', () => {
  expect(binomialInterval({ successes: 3, trials: 4 })).toMatchObject({ level: 0.95, method: 'wilson' });
  expect(binomialInterval({ successes: 3, trials: 4, level: 0.8, method: 'jeffreys' })).toMatchObject({
    level: 0.8,
    method: 'jeffreys',
  });
});

describe('laws', () => {
  test('bounds hold the estimate and stay within 0 and 1', () => {
    fc.assert(
      fc.property(counts, level, method, ({ successes, trials }, level, method) => {
        const { lower, upper } = binomialInterval({ successes, trials, level, method });
        expect(lower).toBeGreaterThanOrEqual(0);
        expect(lower).toBeLessThanOrEqual(successes / trials);
        expect(upper).toBeGreaterThanOrEqual(successes / trials);
        expect(upper).toBeLessThanOrEqual(1);
      }),
      SEED,
    );
  });

  test('counting the dead instead of the living turns the interval round', () => {
    fc.assert(
      fc.property(counts, level, method, ({ successes, trials }, level, method) => {
        const alive = binomialInterval({ successes, trials, level, method });
        const dead = binomialInterval({ successes: trials - successes, trials, level, method });
        expect(Math.abs(alive.lower - (1 - dead.upper))).toBeLessThanOrEqual(1e-12);
        expect(Math.abs(alive.upper - (1 - dead.lower))).toBeLessThanOrEqual(1e-12);
      }),
      SEED,
    );
  });

  test('more confidence, wider interval', () => {
    fc.assert(
      fc.property(counts, level, level, method, ({ successes, trials }, one, other, method) => {
        const narrow = binomialInterval({ successes, trials, level: Math.min(one, other), method });
        const wide = binomialInterval({ successes, trials, level: Math.max(one, other), method });
        expect(wide.lower).toBeLessThanOrEqual(narrow.lower + 1e-14);
        expect(wide.upper).toBeGreaterThanOrEqual(narrow.upper - 1e-14);
      }),
      SEED,
    );
  });

  test('one more success never lowers a bound', () => {
    fc.assert(
      fc.property(counts, level, method, ({ successes, trials }, level, method) => {
        if (successes === trials) return;
        const fewer = binomialInterval({ successes, trials, level, method });
        const more = binomialInterval({ successes: successes + 1, trials, level, method });
        expect(more.lower).toBeGreaterThanOrEqual(fewer.lower);
        expect(more.upper).toBeGreaterThanOrEqual(fewer.upper);
      }),
      SEED,
    );
  });
});

test.each(METHODS)('%s: none gives exactly 0 below and all exactly 1 above', (method) => {
  for (const trials of [1, 2, 50, 400]) {
    const none = binomialInterval({ successes: 0, trials, method });
    const all = binomialInterval({ successes: trials, trials, method });
    expect(none.lower).toBe(0);
    expect(none.upper).toBeLessThan(1);
    expect(all.upper).toBe(1);
    expect(all.lower).toBeGreaterThan(0);
  }
});

test('refuses what is no count or no probability, by name', () => {
  const refused = (input: Parameters<typeof binomialInterval>[0]) =>
    expect(() => binomialInterval(input)).toThrow(RangeError);
  refused({ successes: 1, trials: 0 });
  refused({ successes: 0, trials: 0 });
  refused({ successes: -1, trials: 5 });
  refused({ successes: 6, trials: 5 });
  refused({ successes: 1.5, trials: 5 });
  refused({ successes: 1, trials: 5.5 });
  refused({ successes: Number.NaN, trials: 5 });
  refused({ successes: 1, trials: 5, level: 0 });
  refused({ successes: 1, trials: 5, level: 1 });
  refused({ successes: 1, trials: 5, level: Number.NaN });
  refused({ successes: 1, trials: 5, method: 'wald' as IntervalMethod });
  expect(() => binomialInterval({ successes: 1, trials: 5, level: 95 })).toThrow(
    'binomialInterval: level must be a probability in (0, 1), got 95',
  );
});
