import fc from 'fast-check';
import { expect, test } from 'vitest';
import { intervalHalfWidth, WIDTH_BASES } from '../../../../lib/domain/germination/sample-size/interval-width';
import { seedsForWidth } from '../../../../lib/domain/germination/sample-size/seeds-for-width';
import { binomialInterval, type IntervalMethod } from '../../../../lib/domain/statistics/binomial-interval';
import { expectClose, goldenRows } from '../../../support/golden-table';

const SEED = { seed: 20261125 };
const METHODS = ['wilson', 'exact', 'jeffreys'] as const;

interface WidthRow {
  method: IntervalMethod;
  level: number;
  seeds: number;
  germination: number;
  expected: number;
  widest: number;
}

test.each(WIDTH_BASES)(
  'the %s half-width agrees with R, from 1 seed to 2000 and with 0 and 100 % germination',
  (basis) => {
    for (const row of goldenRows<WidthRow>('seeds-for-width', 'widths')) {
      expectClose(intervalHalfWidth(row.seeds, { ...row, basis }), row[basis], 1e-9, row);
    }
  },
);

interface FewestRow {
  method: IntervalMethod;
  germination: number;
  halfWidth: number;
  expected: number | null;
  widest: number | null;
}

test.each(WIDTH_BASES)('the fewest seeds are those that R finds by trying 1, 2, 3 ... 900 (%s)', (basis) => {
  for (const row of goldenRows<FewestRow>('seeds-for-width', 'fewest')) {
    const found = seedsForWidth({ ...row, level: 0.95, basis });
    const expected = row[basis];
    if (!found.ok) throw new Error(JSON.stringify(row));
    if (expected === null) expect(found.seeds, JSON.stringify(row)).toBeGreaterThan(900);
    else expect(found.seeds, JSON.stringify(row)).toBe(expected);
  }
});

test('from two seeds on the half-width falls with every seed, on which the search by halving rests', () => {
  for (const method of METHODS) {
    for (const germination of [0, 0.02, 0.5, 0.85, 0.97, 1]) {
      for (const basis of WIDTH_BASES) {
        let before = 1;
        for (let seeds = 2; seeds <= 150; seeds++) {
          const width = intervalHalfWidth(seeds, { germination, level: 0.95, method, basis });
          expect(width, `${method} ${germination} ${basis} ${seeds}`).toBeLessThanOrEqual(before);
          before = width;
        }
      }
    }
  }
});

test('no count gives a wider interval than the widest, and the expected one is no wider', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 300 }),
      fc.nat(),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.constantFrom(...METHODS),
      (seeds, count, germination, method) => {
        const question = { germination, level: 0.95, method };
        const widest = intervalHalfWidth(seeds, { ...question, basis: 'widest' });
        const { lower, upper } = binomialInterval({ successes: count % (seeds + 1), trials: seeds, method });
        expect((upper - lower) / 2).toBeLessThanOrEqual(widest * (1 + 1e-12));
        expect(intervalHalfWidth(seeds, { ...question, basis: 'expected' })).toBeLessThanOrEqual(widest * (1 + 1e-12));
      },
    ),
    SEED,
  );
});

const wilson = { germination: 0.85, level: 0.95, method: 'wilson', basis: 'expected' } as const;

test('a narrower interval or a higher level never needs fewer seeds', () => {
  const seeds = (halfWidth: number, level: number) => {
    const found = seedsForWidth({ ...wilson, halfWidth, level });
    return found.ok ? found.seeds : Number.POSITIVE_INFINITY;
  };
  let before = 0;
  for (const halfWidth of [0.4, 0.2, 0.1, 0.05, 0.02, 0.01]) {
    expect(seeds(halfWidth, 0.95)).toBeGreaterThan(before);
    expect(seeds(halfWidth, 0.99)).toBeGreaterThan(seeds(halfWidth, 0.95));
    before = seeds(halfWidth, 0.95);
  }
});

test('with too few seeds it is not reachable, and the width that they reach is said', () => {
  const wanted = { ...wilson, halfWidth: 0.05 };
  const free = seedsForWidth(wanted);
  if (!free.ok) throw new Error('reachable');
  expect(seedsForWidth({ ...wanted, seedsAvailable: free.seeds })).toEqual(free);
  expect(seedsForWidth({ ...wanted, seedsAvailable: free.seeds - 1 })).toEqual({
    ok: false,
    reason: 'not-enough-seeds',
    seedsAvailable: free.seeds - 1,
    halfWidthReached: intervalHalfWidth(free.seeds - 1, wilson),
  });
});

test('refuses a half-width of 0 or of half the scale, and no seeds', () => {
  for (const halfWidth of [0, 0.5, -0.1, Number.NaN]) {
    expect(() => seedsForWidth({ ...wilson, halfWidth })).toThrow(/seedsForWidth: halfWidth/);
  }
  expect(() => seedsForWidth({ ...wilson, halfWidth: 0.1, seedsAvailable: 0 })).toThrow(RangeError);
  expect(() => seedsForWidth({ ...wilson, halfWidth: 0.1, germination: 1.2 })).toThrow(/germination/);
  expect(() => intervalHalfWidth(0, wilson)).toThrow(RangeError);
});
