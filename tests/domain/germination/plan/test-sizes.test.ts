import { expect, test } from 'vitest';
import { dishesFor, seedsOf, TEST_SIZES } from '@/lib/domain/germination/plan/test-sizes';

test('any number of seeds is laid out in at least two dishes of at most 25, as alike as can be', () => {
  expect(dishesFor(40)).toEqual([20, 20]);
  expect(dishesFor(47)).toEqual([24, 23]);
  expect(dishesFor(101)).toEqual([21, 20, 20, 20, 20]);
  expect(dishesFor(1)).toEqual([1]);
  for (let seeds = 1; seeds <= 400; seeds++) {
    const dishes = dishesFor(seeds);
    expect(dishes.reduce((sum, one) => sum + one, 0)).toBe(seeds);
    expect(Math.max(...dishes)).toBeLessThanOrEqual(25);
    expect(Math.max(...dishes) - Math.min(...dishes)).toBeLessThanOrEqual(1);
  }
  expect(() => dishesFor(0)).toThrow(RangeError);
});

test('sizes are offered from the fewest seeds on', () => {
  const seeds = TEST_SIZES.map(seedsOf);
  expect(seeds).toEqual([...seeds].sort((a, b) => a - b));
});
