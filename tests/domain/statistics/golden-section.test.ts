import { expect, test } from 'vitest';
import { highestBetween } from '../../../lib/domain/statistics/golden-section';

test('finds a peak inside the bracket, its height far better than its place', () => {
  const found = highestBetween((x) => Math.log(x) - x / 3, 0.1, 20, 40);
  expect(found.x).toBeCloseTo(3, 6);
  expect(Math.abs(found.height - (Math.log(3) - 1))).toBeLessThan(1e-14);
});

test('a peak at an end is that end itself', () => {
  expect(highestBetween((x) => -x, 0, 1, 10)).toEqual({ x: 0, height: -0 });
  expect(highestBetween((x) => x, 0, 1, 10)).toEqual({ x: 1, height: 1 });
});

test('an end where the function is minus infinity is no trouble', () => {
  const found = highestBetween((x) => Math.log(1 - x) + 2 * Math.log(x), 0, 1, 50);
  expect(found.x).toBeCloseTo(2 / 3, 7);
});
