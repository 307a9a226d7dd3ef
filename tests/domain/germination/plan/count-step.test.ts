import { expect, test } from 'vitest';
import { countStep } from '@/lib/domain/germination/plan/count-step';

test('counts are spread evenly and no more than five days apart', () => {
  expect(countStep(3, 8)).toBeNull();
  expect(countStep(3, 10)).toBe(4);
  expect(countStep(6, 14)).toBe(4);
  expect(countStep(6, 21)).toBe(5);
  expect(countStep(7, 7)).toBeNull();
});

test('days out of order are refused', () => {
  expect(() => countStep(7, 6)).toThrow(RangeError);
  expect(() => countStep(2.5, 6)).toThrow(RangeError);
});
