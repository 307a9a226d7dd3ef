import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dryBasisFromFresh, freshBasisFromDry } from '../../../lib/domain/moisture/basis';

test('8 g of water in 100 g of fresh seed is 8 g on 92 g of dry matter', () => {
  expect(dryBasisFromFresh(8)).toBeCloseTo((100 * 8) / 92, 12);
  expect(freshBasisFromDry(25)).toBe(20);
  expect(freshBasisFromDry(0)).toBe(0);
});

test('the two conversions undo each other', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 60, noNaN: true }), (moisturePercent) => {
      expect(freshBasisFromDry(dryBasisFromFresh(moisturePercent))).toBeCloseTo(moisturePercent, 10);
    }),
    { seed: 20260101 },
  );
});

test('the dry basis is never below the fresh basis', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.01, max: 99, noNaN: true }), (moisturePercent) => {
      expect(dryBasisFromFresh(moisturePercent)).toBeGreaterThanOrEqual(moisturePercent);
    }),
    { seed: 20260102 },
  );
});

test.each([-0.1, 100, Number.NaN, Number.POSITIVE_INFINITY])('refuses a fresh-basis moisture of %s', (value) => {
  expect(() => dryBasisFromFresh(value)).toThrow(RangeError);
});

test.each([-0.1, Number.NaN, Number.POSITIVE_INFINITY])('refuses a dry-basis moisture of %s', (value) => {
  expect(() => freshBasisFromDry(value)).toThrow(RangeError);
});
