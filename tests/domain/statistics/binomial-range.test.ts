import { expect, test } from 'vitest';
import { binomialRangeExceedance } from '../../../lib/domain/statistics/binomial-range';
import { goldenRows } from '../../support/golden-table';

interface Row {
  trials: number[];
  probability: number;
  range: number;
  exceedance: number;
}

test.each(['enumerated', 'computed'])('agrees with R, unequal samples too (%s)', (part) => {
  for (const row of goldenRows<Row>('replicate-tolerance', part)) {
    const exceedance = binomialRangeExceedance(row)(row.range);
    expect(Math.abs(exceedance - row.exceedance), JSON.stringify({ ...row, exceedance })).toBeLessThanOrEqual(1e-11);
  }
});

test('one sample has no range, and equal chances of 0 or 1 leave none', () => {
  expect(binomialRangeExceedance({ trials: [50], probability: 0.4 })(0)).toBeLessThanOrEqual(1e-12);
  expect(binomialRangeExceedance({ trials: [50, 25], probability: 0 })(0)).toBe(0);
  expect(binomialRangeExceedance({ trials: [50, 25], probability: 1 })(0)).toBe(0);
});

test('refuses no sample, an empty sample and no probability', () => {
  expect(() => binomialRangeExceedance({ trials: [], probability: 0.5 })).toThrow(RangeError);
  expect(() => binomialRangeExceedance({ trials: [10, 0], probability: 0.5 })).toThrow(RangeError);
  expect(() => binomialRangeExceedance({ trials: [10, 2.5], probability: 0.5 })).toThrow(RangeError);
  expect(() => binomialRangeExceedance({ trials: [10], probability: 1.5 })).toThrow(RangeError);
});
