import { expect, test } from 'vitest';
import { nextCountInWords } from '@/app/_format/next-count-words';

const words = (on: string, final = false, daysLate = 0) => nextCountInWords({ on, final, daysLate }, '2026-11-25');

test('a count is called by its day, today or late, and the last one is marked', () => {
  expect(words('2026-12-02')).toBe('2 Dec 2026');
  expect(words('2026-11-25')).toBe('today');
  expect(words('2026-11-25', true)).toBe('today, the last count');
  expect(words('2026-11-24', false, 1)).toBe('1 day late');
  // Today is a planned day as well, but the one before it was missed.
  expect(words('2026-11-25', true, 3)).toBe('3 days late, the last count');
});
