import { expect, test } from 'vitest';
import { seedForTest } from '@/lib/domain/germination/plan/seed-for-test';

test('what regrowing takes stays, and half of the seed at least', () => {
  expect(seedForTest(1000, 640)).toBe(360);
  expect(seedForTest(1000, 240)).toBe(500);
  expect(seedForTest(240, 240)).toBe(0);
  expect(seedForTest(0, 0)).toBe(0);
});

test('where all the seed is too little to regrow from, one in ten may go; without a forecast half', () => {
  expect(seedForTest(239, 240)).toBe(23);
  expect(seedForTest(2000, Number.POSITIVE_INFINITY)).toBe(200);
  expect(seedForTest(101, null)).toBe(50);
});

test('refuses numbers of seeds that are none', () => {
  expect(() => seedForTest(-1, 0)).toThrow(RangeError);
  expect(() => seedForTest(1, Number.NaN)).toThrow(RangeError);
});
