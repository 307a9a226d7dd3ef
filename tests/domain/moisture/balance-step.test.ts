import { expect, test } from 'vitest';
import { balanceStep } from '../../../lib/domain/moisture/balance-step';

test('the weight with the most decimals tells the step', () => {
  expect(balanceStep([])).toBe(1);
  expect(balanceStep([500, 474])).toBe(1);
  expect(balanceStep([500, 474.9])).toBe(0.1);
  expect(balanceStep([12.345, 9])).toBe(0.001);
  expect(balanceStep([12.3, 1 / 3])).toBeCloseTo(0.00001, 12);
  expect(() => balanceStep([Number.NaN])).toThrow(RangeError);
});
