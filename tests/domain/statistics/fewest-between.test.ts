import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fewestBetween } from '../../../lib/domain/statistics/fewest-between';

test('finds the first number that is enough, wherever it lies in the bracket', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1e6 }), fc.nat(1e6), fc.nat(1e6), (tooFew, before, after) => {
      const first = tooFew + 1 + before;
      expect(fewestBetween((count) => count >= first, tooFew, first + after)).toBe(first);
    }),
    { seed: 12 },
  );
});

test('a bracket of one needs no look', () => {
  expect(fewestBetween(() => expect.unreachable(), 4, 5)).toBe(5);
});
