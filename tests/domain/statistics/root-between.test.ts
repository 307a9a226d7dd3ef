import { expect, test } from 'vitest';
import { rootBetween } from '../../../lib/domain/statistics/root-between';

test('finds the crossing from either side', () => {
  expect(rootBetween((x) => x * x - 2, 0, 2, 1e-13)).toBeCloseTo(Math.SQRT2, 12);
  expect(rootBetween((x) => x * x - 2, 2, 0, 1e-13)).toBeCloseTo(Math.SQRT2, 12);
});

test('is not held up by one end far steeper than the other', () => {
  let looks = 0;
  const root = rootBetween(
    (x) => {
      looks += 1;
      return Math.exp(x) - 2;
    },
    0,
    50,
    1e-12,
  );
  expect(root).toBeCloseTo(Math.LN2, 11);
  expect(looks).toBeLessThan(60);
});

test('an end that is the root already is returned', () => {
  expect(rootBetween((x) => x, 0, 1, 1e-9)).toBe(0);
  expect(rootBetween((x) => x, -1, 0, 1e-9)).toBe(0);
});

test('refuses two ends on one side', () => {
  expect(() => rootBetween((x) => x * x + 1, -1, 1, 1e-9)).toThrow(/share a sign/);
});
