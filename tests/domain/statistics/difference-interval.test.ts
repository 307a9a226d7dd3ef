import fc from 'fast-check';
import { expect, test } from 'vitest';
import { differenceInterval } from '../../../lib/domain/statistics/difference-interval';
import { goldenRows } from '../../support/golden-table';

const SEED = { seed: 20261125 };

interface Row {
  s1: number;
  n1: number;
  s2: number;
  n2: number;
  level: number;
  lower: number;
  upper: number;
}

const between = (s1: number, n1: number, s2: number, n2: number, level = 0.95) =>
  differenceInterval({ first: { successes: s1, trials: n1 }, second: { successes: s2, trials: n2 }, level });

test('agrees with R, one seed against one, none, all and hundreds', () => {
  for (const row of goldenRows<Row>('difference-interval', 'rows')) {
    const found = between(row.s1, row.n1, row.s2, row.n2, row.level);
    expect(Math.abs(found.lower - row.lower), JSON.stringify(row)).toBeLessThan(1e-12);
    expect(Math.abs(found.upper - row.upper), JSON.stringify(row)).toBeLessThan(1e-12);
  }
});

test('worked examples of the paper, to four decimals', () => {
  // Newcombe (1998), table II, method 10 (from memory): s1/n1 - s2/n2, lower, upper.
  for (const [s1, n1, s2, n2, lower, upper] of [
    [56, 70, 48, 80, 0.0524, 0.3339],
    [9, 10, 3, 10, 0.1705, 0.809],
    [6, 7, 2, 7, 0.0582, 0.8062],
    [5, 56, 0, 29, -0.0381, 0.1926],
    [0, 10, 0, 10, -0.2775, 0.2775],
    [10, 10, 0, 10, 0.6075, 1],
  ] as const) {
    const found = between(s1, n1, s2, n2);
    expect(found.lower, `${s1}/${n1} - ${s2}/${n2}`).toBeCloseTo(lower, 4);
    expect(found.upper, `${s1}/${n1} - ${s2}/${n2}`).toBeCloseTo(upper, 4);
  }
});

const sample = fc
  .integer({ min: 1, max: 500 })
  .chain((trials) => fc.record({ trials: fc.constant(trials), successes: fc.integer({ min: 0, max: trials }) }));

test('taking them the other way round turns the interval about', () => {
  fc.assert(
    fc.property(sample, sample, (first, second) => {
      const there = differenceInterval({ first, second });
      const back = differenceInterval({ first: second, second: first });
      expect(back.lower).toBeCloseTo(-there.upper, 13);
      expect(back.difference).toBeCloseTo(-there.difference, 13);
    }),
    SEED,
  );
});

test('holds the difference found, stays within -1 and 1, and narrows with more seeds of both', () => {
  fc.assert(
    fc.property(sample, sample, (first, second) => {
      const found = differenceInterval({ first, second });
      expect(found.lower).toBeLessThanOrEqual(found.difference);
      expect(found.upper).toBeGreaterThanOrEqual(found.difference);
      expect(found.lower).toBeGreaterThanOrEqual(-1);
      expect(found.upper).toBeLessThanOrEqual(1);
      const more = differenceInterval({
        first: { successes: 4 * first.successes, trials: 4 * first.trials },
        second: { successes: 4 * second.successes, trials: 4 * second.trials },
      });
      expect(more.upper - more.lower).toBeLessThan(found.upper - found.lower);
    }),
    SEED,
  );
});

test('refuses what is no count or no level', () => {
  expect(() => between(2, 1, 0, 1)).toThrow(RangeError);
  expect(() => between(0, 0, 0, 1)).toThrow(RangeError);
  expect(() => between(0, 1, 0, 1, 95)).toThrow(/level/);
});
