import { expect, test } from 'vitest';
import { testGoal } from '@/lib/domain/germination/plan/test-goal';

test('five points either side of the line, fewer where there is no room above', () => {
  expect(testGoal(0.85)).toMatchObject({ line: 0.85, poor: 0.85 - 0.05, good: 0.9 });
  expect(testGoal(0.95).good).toBeCloseTo(0.98, 12);
  expect(testGoal(0.95).poor).toBeCloseTo(0.92, 12);
});

test('lots share the plans of the nearest whole percent', () => {
  expect(testGoal(0.7149)).toEqual(testGoal(0.71));
  expect(testGoal(0.715001).line).toBe(0.72);
});

test('lines at which no count could tell are taken to the nearest at which one can', () => {
  expect(testGoal(0.999).line).toBe(0.98);
  expect(testGoal(0.02).line).toBe(0.1);
  for (let percent = 1; percent < 100; percent++) {
    const { poor, good } = testGoal(percent / 100);
    expect(poor).toBeGreaterThan(0);
    expect(good).toBeLessThan(1);
  }
});

test('a line of nothing or of everything is refused', () => {
  for (const line of [0, 1, Number.NaN]) expect(() => testGoal(line)).toThrow(RangeError);
});
