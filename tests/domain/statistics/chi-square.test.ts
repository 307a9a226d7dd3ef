import { expect, test } from 'vitest';
import { chiSquareUpperTail } from '../../../lib/domain/statistics/chi-square';
import { expectClose, goldenRows } from '../../support/golden-table';

test('the upper tail agrees with R down to 1e-263', () => {
  for (const row of goldenRows<{ chiSquare: number; degreesOfFreedom: number; upperTail: number }>(
    'chi-square',
    'rows',
  )) {
    expectClose(chiSquareUpperTail(row.chiSquare, row.degreesOfFreedom), row.upperTail, 1e-11, row);
  }
});

test('nothing is certain to be exceeded but 0, and infinity never is', () => {
  expect(chiSquareUpperTail(0, 3)).toBe(1);
  expect(chiSquareUpperTail(Number.POSITIVE_INFINITY, 3)).toBe(0);
});

test('refuses negative statistics and no degrees of freedom', () => {
  expect(() => chiSquareUpperTail(-1, 3)).toThrow(/chiSquareUpperTail: chiSquare/);
  expect(() => chiSquareUpperTail(Number.NaN, 3)).toThrow(/chiSquareUpperTail: chiSquare/);
  for (const degreesOfFreedom of [0, -1, Number.POSITIVE_INFINITY, Number.NaN]) {
    expect(() => chiSquareUpperTail(1, degreesOfFreedom)).toThrow(/chiSquareUpperTail: degreesOfFreedom/);
  }
});
