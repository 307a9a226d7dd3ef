import { expect, test } from 'vitest';
import { dayOfTray, dueInWords } from '@/app/bench/_parts/day-words';
import { trayInView } from '@/tests/support/bench-dish';

const TODAY = '2026-11-25';
const due = (on: string, final: boolean, daysLate: number, countedToday = false) =>
  dueInWords(trayInView('T-1', { next: { on, final, daysLate }, countedToday }), TODAY);

test('a count is due today, late, or on a later day; the final one is named', () => {
  expect(due(TODAY, false, 0)).toBe('due today');
  expect(due(TODAY, true, 0)).toBe('final count today');
  expect(due('2026-11-24', false, 1)).toBe('count, 1 day late');
  expect(due('2026-11-20', true, 5)).toBe('final count, 5 days late');
  expect(due('2026-12-02', true, 0)).toBe('final count on 2 Dec');
});

test('a final count that was made today is no longer due', () => {
  expect(due(TODAY, true, 0, true)).toBe('final count made');
});

test('how long a tray has stood, and until when', () => {
  expect(dayOfTray(trayInView('T-1'), TODAY)).toBe('day 7 of 14');
});
