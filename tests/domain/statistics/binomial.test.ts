import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  binomialLogPmf,
  binomialLowerTail,
  binomialUpperTail,
  logChoose,
} from '../../../lib/domain/statistics/binomial';
import { expectClose, goldenRows } from '../../support/golden-table';

const SEED = { seed: 20261125 };
/** R itself loses digits and the double its range below this. */
const SMALLEST_COMPARED = 1e-300;

interface Row {
  successes: number;
  trials: number;
  probability: number;
  logPmf: number;
  atMost: number;
  atLeast: number;
}

test('probabilities and both tails agree with R, from 1 to 100 000 trials', () => {
  for (const row of goldenRows<Row>('binomial', 'rows')) {
    expectClose(Math.exp(binomialLogPmf(row) - row.logPmf), 1, 1e-9, row);
    if (row.atMost > SMALLEST_COMPARED) expectClose(binomialLowerTail(row), row.atMost, 1e-11, row);
    else expect(binomialLowerTail(row)).toBeLessThanOrEqual(SMALLEST_COMPARED);
    if (row.atLeast > SMALLEST_COMPARED) expectClose(binomialUpperTail(row), row.atLeast, 1e-11, row);
    else expect(binomialUpperTail(row)).toBeLessThanOrEqual(SMALLEST_COMPARED);
  }
});

test('at most k and at least k + 1 add to 1', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 500 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 0.999, noNaN: true }),
      (trials, probability, share) => {
        const successes = Math.floor(share * trials);
        const sum =
          binomialLowerTail({ successes, trials, probability }) +
          binomialUpperTail({ successes: successes + 1, trials, probability });
        expect(Math.abs(sum - 1)).toBeLessThanOrEqual(1e-12);
      },
    ),
    SEED,
  );
});

test('at chance 0 and 1 the certain count has probability 1 and every other 0', () => {
  expect(binomialLogPmf({ successes: 0, trials: 9, probability: 0 })).toBeCloseTo(0, 15);
  expect(binomialLogPmf({ successes: 9, trials: 9, probability: 1 })).toBeCloseTo(0, 15);
  expect(binomialLogPmf({ successes: 1, trials: 9, probability: 0 })).toBe(Number.NEGATIVE_INFINITY);
  expect(binomialLogPmf({ successes: 8, trials: 9, probability: 1 })).toBe(Number.NEGATIVE_INFINITY);
  expect(binomialLowerTail({ successes: 8, trials: 9, probability: 1 })).toBe(0);
  expect(binomialUpperTail({ successes: 1, trials: 9, probability: 0 })).toBe(0);
  expect(binomialLogPmf({ successes: 0, trials: 0, probability: 0.3 })).toBeCloseTo(0, 15);
});

test('there are 75 287 520 ways to take 5 of 100', () => {
  expectClose(Math.exp(logChoose(100, 5)), 75287520, 1e-12, {});
});

test('refuses what is no count or no probability', () => {
  for (const f of [binomialLogPmf, binomialLowerTail, binomialUpperTail]) {
    expect(() => f({ successes: 3, trials: 2, probability: 0.5 })).toThrow(RangeError);
    expect(() => f({ successes: 0.5, trials: 2, probability: 0.5 })).toThrow(RangeError);
    expect(() => f({ successes: 1, trials: 2, probability: 1.1 })).toThrow(/probability/);
    expect(() => f({ successes: 1, trials: 2, probability: -0.1 })).toThrow(/probability/);
    expect(() => f({ successes: 1, trials: 2, probability: Number.NaN })).toThrow(RangeError);
  }
});
