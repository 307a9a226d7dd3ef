import { expect, test } from 'vitest';
import { addDays } from '@/lib/domain/calendar/calendar-date';
import { countDays } from '@/lib/domain/germination/bench/count-days';
import { countStep, countsInTest } from '@/lib/domain/germination/plan/count-step';

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

test('a test has as many counts as its tray has days', () => {
  const setOn = '2026-11-18';
  for (const [first, final] of [
    [7, 7],
    [3, 8],
    [3, 10],
    [6, 14],
    [6, 21],
    [10, 28],
  ] as const) {
    const days = countDays({
      firstCountOn: addDays(setOn, first),
      finalCountOn: addDays(setOn, final),
      countEveryDays: countStep(first, final),
    });
    expect(countsInTest(first, final)).toBe(days.length);
  }
});
