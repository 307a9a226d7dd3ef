import { expect, test } from 'vitest';
import { groupPlan } from '@/lib/domain/germination/plan/group-plan';
import { testGoal } from '@/lib/domain/germination/plan/test-goal';
import { operatingCharacteristic } from '@/lib/domain/germination/sample-size/operating-characteristic';

test('a plan keeps the limits of error, always ends, and takes no more seed than there is', () => {
  for (const line of [0.55, 0.7, 0.85, 0.95]) {
    for (const spare of [130, 250, 1000]) {
      const plan = groupPlan(line, spare);
      if (!plan) continue;
      const { poor, good } = testGoal(line);
      expect(plan.looks.at(-1)?.seedsTested).toBeLessThanOrEqual(spare);
      expect(operatingCharacteristic(plan, poor).keep).toBeLessThanOrEqual(0.05 * (1 + 1e-9));
      expect(operatingCharacteristic(plan, good).regrow).toBeLessThanOrEqual(0.05 * (1 + 1e-9));
      expect(operatingCharacteristic(plan, line).undecided).toBe(0);
    }
  }
});

test('seed too little for its limits gives no plan', () => {
  expect(groupPlan(0.85, 79)).toBeNull();
  expect(groupPlan(0.7, 80)).toBeNull();
});

test('the same line and what it was allowed to use give the same plan, so that a command can make it again', () => {
  const plan = groupPlan(0.8512, 317);
  if (!plan) throw new Error('no plan');
  expect(groupPlan(plan.line, plan.mostSeeds)).toEqual(plan);
});
