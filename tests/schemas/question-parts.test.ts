import { expect, test } from 'vitest';
import { assurancePercent, balanceStepG, level, oneOf } from '../../lib/schemas/calculators/question-parts';

test('a choice that is not of the list is refused in words', () => {
  const basis = oneOf(['fresh', 'dry']);
  expect(basis.parse('dry')).toBe('dry');
  expect(basis.safeParse('wet').error?.issues[0]?.message).toBe('Choose one of the list.');
  expect(level.parse('95')).toBe('95');
  expect(level.safeParse('100').success).toBe(false);
});

test('nothing is assured always, and no balance shows everything', () => {
  expect(assurancePercent.parse('99,9')).toBe(99.9);
  expect(assurancePercent.safeParse('100').error?.issues[0]?.message).toBe('Write a number between 1 and 99.9 %.');
  expect(balanceStepG.parse('0.01')).toBe(0.01);
  expect(balanceStepG.safeParse('0').success).toBe(false);
});
