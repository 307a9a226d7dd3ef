import { expect, test } from 'vitest';
import { isDoneWith } from '@/app/bench/_parts/tray-progress';
import { benchCount, dishWith, trayInView } from '@/tests/support/bench-dish';

const TODAY = '2026-11-25';
const FINAL = '2026-12-02';

test('a tray is done with when every dish that holds seed was counted, a count of none included', () => {
  expect(isDoneWith(trayInView('T-1', { dishes: [dishWith(50)] }), TODAY)).toBe(false);
  expect(isDoneWith(trayInView('T-1', { dishes: [dishWith(50, benchCount('a', TODAY, {}))] }), TODAY)).toBe(true);
  expect(
    isDoneWith(trayInView('T-1', { dishes: [dishWith(5, benchCount('a', '2026-11-23', { normal: 5 }))] }), TODAY),
  ).toBe(true);
});

test('seed may be left before the final count, and not on it', () => {
  const dishes = [dishWith(50, benchCount('a', TODAY, { normal: 4 }), benchCount('b', FINAL, { normal: 4 }))];
  expect(isDoneWith(trayInView('T-1', { dishes }), TODAY)).toBe(true);
  expect(isDoneWith(trayInView('T-1', { dishes }), FINAL)).toBe(false);
});

test('too many seeds and counts that disagree keep a tray open on any day', () => {
  const tooMany = [dishWith(5, benchCount('a', TODAY, { normal: 6 }))];
  expect(isDoneWith(trayInView('T-1', { dishes: tooMany }), TODAY)).toBe(false);
  const disagree = [dishWith(50, benchCount('a', TODAY, { normal: 6 }), benchCount('b', TODAY, { normal: 5 }))];
  expect(isDoneWith(trayInView('T-1', { dishes: disagree }), TODAY)).toBe(false);
});
