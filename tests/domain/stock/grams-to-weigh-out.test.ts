import { expect, it } from 'vitest';
import { gramsToWeighOut } from '@/lib/domain/stock/grams-to-weigh-out';

it('gives grams to three figures, from dust to beans, and none without a thousand-seed weight', () => {
  expect(gramsToWeighOut(50, 3.137)).toBe(0.157);
  expect(gramsToWeighOut(50, 0.0123)).toBe(0.000615);
  expect(gramsToWeighOut(37, 1234.5)).toBe(45.7);
  expect(gramsToWeighOut(50, null)).toBeNull();
});
