import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inverseLogOdds, logOdds } from '../../../lib/domain/statistics/log-odds';

test('log odds and their inverse undo each other', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-300, max: 0.5, noNaN: true }), (proportion) => {
      expect(Math.abs(inverseLogOdds(logOdds(proportion)) / proportion - 1)).toBeLessThan(1e-12);
    }),
    { seed: 11 },
  );
});

test('the complement has the negative log odds, with its own digits', () => {
  expect(logOdds(0.8)).toBeCloseTo(Math.log(4), 14);
  expect(inverseLogOdds(-Math.log(4))).toBeCloseTo(0.2, 15);
  expect(inverseLogOdds(-50) / Math.exp(-50)).toBeCloseTo(1, 14);
});

test('0 and 1 are the ends', () => {
  expect([logOdds(0), logOdds(1)]).toEqual([Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]);
  expect([inverseLogOdds(Number.NEGATIVE_INFINITY), inverseLogOdds(Number.POSITIVE_INFINITY)]).toEqual([0, 1]);
});
