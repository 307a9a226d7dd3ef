import { expect, test } from 'vitest';
import { edgeBetween } from '../../../lib/domain/statistics/edge-between';

test('brackets the edge from either side, the end that holds first', () => {
  const [below, above] = edgeBetween((x) => x * x <= 2, 0, 5, 1e-12);
  expect(below * below).toBeLessThanOrEqual(2);
  expect(above * above).toBeGreaterThan(2);
  expect(above - below).toBeLessThanOrEqual(1e-12);
  const [high, low] = edgeBetween((x) => x >= -3, 4, -10, 1e-12);
  expect(high).toBeGreaterThanOrEqual(-3);
  expect(low).toBeLessThan(-3);
  expect(high).toBeCloseTo(-3, 11);
});

test('tries neither end, and ends even where no width is small enough', () => {
  const tried: number[] = [];
  const [inside, outside] = edgeBetween((x) => tried.push(x) > 0 && x < 1 / 3, 0, 1, 0);
  expect(tried).not.toContain(0);
  expect(tried).not.toContain(1);
  expect(tried).toHaveLength(60);
  expect(outside - inside).toBeLessThan(1e-15);
});
