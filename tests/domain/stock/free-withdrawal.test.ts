import { expect, test } from 'vitest';
import { isFreeForTest } from '../../../lib/domain/stock/free-withdrawal';

const free = { reason: 'test', note: 'for the November tests', usedBy: 0, takenBack: false };

test('seed taken out for a test is free until a test names it or it is taken back', () => {
  expect(isFreeForTest(free)).toBe(true);
  expect(isFreeForTest({ ...free, usedBy: 1 })).toBe(false);
  expect(isFreeForTest({ ...free, takenBack: true })).toBe(false);
  expect(isFreeForTest({ ...free, reason: 'sowing' })).toBe(false);
});

test('a line that an older test wrote belongs to that test', () => {
  expect(isFreeForTest({ ...free, note: 'Germination test T-0012' })).toBe(false);
  expect(isFreeForTest({ ...free, note: null })).toBe(true);
});
