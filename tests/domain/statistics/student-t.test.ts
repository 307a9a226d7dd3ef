import { expect, test } from 'vitest';
import { studentTQuantile } from '../../../lib/domain/statistics/student-t';
import golden from '../../golden/student-t.json';

test('agrees with R over the grid to 1e-11', () => {
  for (const { probability, degreesOfFreedom, t } of golden.rows) {
    const ours = studentTQuantile(probability, degreesOfFreedom);
    const error = t === 0 ? Math.abs(ours) : Math.abs(ours / t - 1);
    expect(error, JSON.stringify({ probability, degreesOfFreedom, t, ours })).toBeLessThan(1e-11);
  }
  expect(golden.rows.length).toBe(117);
});

test('97.5 % point with 7 degrees of freedom is 2.365 (any printed t table; from memory)', () => {
  expect(studentTQuantile(0.975, 7)).toBeCloseTo(2.3646, 4);
});

test('is odd about one half, and 0 there', () => {
  expect(studentTQuantile(0.5, 3)).toBe(0);
  expect(studentTQuantile(0.1, 3)).toBe(-studentTQuantile(0.9, 3));
});

test.each([
  [0, 3],
  [1, 3],
  [Number.NaN, 3],
  [0.9, 0],
  [0.9, Number.POSITIVE_INFINITY],
])('refuses probability %s with %s degrees of freedom', (probability, degreesOfFreedom) => {
  expect(() => studentTQuantile(probability, degreesOfFreedom)).toThrow(/studentTQuantile/);
});
