import { expect, test } from 'vitest';
import { groupPlan } from '@/lib/domain/germination/plan/group-plan';
import { parseSequentialPlan, sequentialPlanText } from '@/lib/schemas/sequential-plan';

test('a plan comes back as it was kept; a fixed test has none', () => {
  const plan = groupPlan(0.85, 400);
  if (!plan) throw new Error('no plan');
  expect(parseSequentialPlan(sequentialPlanText(plan))).toEqual({ line: 0.85, looks: plan.looks });
  expect(parseSequentialPlan(null)).toBeNull();
});

test('what is no plan is refused', () => {
  expect(() => parseSequentialPlan('{"looks":[]}')).toThrow();
  expect(() => parseSequentialPlan('{"looks":[{"seedsTested":1.5,"regrowAtMost":0,"keepAtLeast":1}]}')).toThrow();
  expect(() => parseSequentialPlan('nothing')).toThrow();
});
