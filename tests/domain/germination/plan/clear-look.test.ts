import { expect, test } from 'vitest';
import { clearChances, clearLook } from '@/lib/domain/germination/plan/clear-look';
import { testGoal } from '@/lib/domain/germination/plan/test-goal';
import { seedsOf, TEST_SIZES } from '@/lib/domain/germination/plan/test-sizes';

test('a poor lot is kept, and a good one regrown, in at most 5 of 100 cases', () => {
  for (let percent = 10; percent <= 98; percent += 2) {
    const goal = testGoal(percent / 100);
    for (const size of TEST_SIZES) {
      const look = clearLook(seedsOf(size), goal);
      expect(clearChances(look, goal.poor).keep).toBeLessThanOrEqual(0.05 * (1 + 1e-9));
      expect(clearChances(look, goal.good).regrow).toBeLessThanOrEqual(0.05 * (1 + 1e-9));
    }
  }
});

test('few seeds leave counts that are not clear; with many every count is', () => {
  const goal = testGoal(0.85);
  expect(clearLook(40, goal)).toEqual({ seedsTested: 40, regrowAtMost: 32, keepAtLeast: 37 });
  const many = clearLook(400, goal);
  expect(many.keepAtLeast).toBe((many.regrowAtMost ?? 0) + 1);
  const { keep, regrow } = clearChances(many, 0.86);
  expect(keep + regrow).toBeCloseTo(1, 12);
});

test('so few seeds that no count is clear say so', () => {
  expect(clearLook(2, testGoal(0.85))).toEqual({ seedsTested: 2, regrowAtMost: 0, keepAtLeast: null });
  expect(clearChances({ seedsTested: 2, regrowAtMost: null, keepAtLeast: null }, 0.5)).toEqual({ keep: 0, regrow: 0 });
  expect(() => clearLook(0, testGoal(0.85))).toThrow(RangeError);
});
