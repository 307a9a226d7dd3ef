import fc from 'fast-check';
import { expect, test } from 'vitest';
import { betaBinomialLogPmf } from '../../../lib/domain/statistics/beta-binomial';
import { binomialLogPmf } from '../../../lib/domain/statistics/binomial';
import { expectClose, goldenRows } from '../../support/golden-table';

const SEED = { seed: 20261125 };
const mean = fc.double({ min: 0.001, max: 0.999, noNaN: true });
const correlation = fc.double({ min: 0, max: 0.9, noNaN: true });

interface Row {
  successes: number;
  trials: number;
  mean: number;
  correlation: number;
  logPmf: number;
}

test('agrees with R, from rho 0 to 0.8', () => {
  for (const row of goldenRows<Row>('beta-binomial', 'rows')) {
    expectClose(Math.exp(betaBinomialLogPmf(row) - row.logPmf), 1, 1e-10, row);
  }
});

test('without correlation it is the binomial, and a trace of correlation changes next to nothing', () => {
  const counts = { successes: 341, trials: 400 };
  const plain = binomialLogPmf({ ...counts, probability: 0.87 });
  expectClose(betaBinomialLogPmf({ ...counts, mean: 0.87, correlation: 0 }), plain, 1e-12, counts);
  expectClose(betaBinomialLogPmf({ ...counts, mean: 0.87, correlation: 1e-15 }), plain, 1e-10, counts);
});

test('all counts together have probability 1, mean n p and variance n p q (1 + (n - 1) rho)', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 120 }), mean, correlation, (trials, mean, correlation) => {
      let total = 0;
      let sum = 0;
      let squares = 0;
      for (let successes = 0; successes <= trials; successes++) {
        const p = Math.exp(betaBinomialLogPmf({ successes, trials, mean, correlation }));
        total += p;
        sum += p * successes;
        squares += p * (successes - trials * mean) ** 2;
      }
      expectClose(total, 1, 1e-11, { trials, mean, correlation });
      expectClose(sum, trials * mean, 1e-10, { trials, mean, correlation });
      expectClose(squares, trials * mean * (1 - mean) * (1 + (trials - 1) * correlation), 1e-9, { trials, mean });
    }),
    { ...SEED, numRuns: 60 },
  );
});

test('a mean too near 1 for a double is taken from its complement', () => {
  // 1 - 1e-20 is 1 in a double; one dead of 100 still has the probability 100 * 1e-20.
  const logPmf = betaBinomialLogPmf({ successes: 99, trials: 100, mean: 1, meanComplement: 1e-20, correlation: 0 });
  expectClose(Math.exp(logPmf), 1e-18, 1e-12, {});
});

test('at mean 0 and 1 only the certain count is possible', () => {
  expect(betaBinomialLogPmf({ successes: 0, trials: 5, mean: 0, correlation: 0.1 })).toBeCloseTo(0, 14);
  expect(betaBinomialLogPmf({ successes: 5, trials: 5, mean: 1, correlation: 0.1 })).toBeCloseTo(0, 14);
  expect(betaBinomialLogPmf({ successes: 1, trials: 5, mean: 0, correlation: 0.1 })).toBe(Number.NEGATIVE_INFINITY);
  expect(betaBinomialLogPmf({ successes: 4, trials: 5, mean: 1, correlation: 0 })).toBe(Number.NEGATIVE_INFINITY);
});

test('refuses what is outside its range', () => {
  const good = { successes: 1, trials: 2, mean: 0.5, correlation: 0.1 };
  for (const [bad, named] of [
    [{ successes: 3 }, /successes/],
    [{ mean: -0.1 }, /: mean must/],
    [{ mean: 1.1, meanComplement: 0 }, /: mean must/],
    [{ mean: Number.NaN }, /: mean must/],
    [{ meanComplement: 2 }, /meanComplement must/],
    [{ meanComplement: -0.1 }, /meanComplement must/],
    [{ correlation: 1 }, /correlation must/],
    [{ correlation: -0.1 }, /correlation must/],
  ] as const) {
    expect(() => betaBinomialLogPmf({ ...good, ...bad }), JSON.stringify(bad)).toThrow(named);
  }
});
