import { expect, test } from 'vitest';
import { daysBetween } from '../../../lib/domain/calendar/calendar-date';
import { nextSowingDates } from '../../../lib/domain/calendar/season';
import { comingSowings } from '../../../lib/domain/regrow/coming-sowings';

test('are those of the calendar, each so many days ahead as lie between', () => {
  for (const today of ['2026-11-25', '2028-02-29', '2026-04-30']) {
    for (const month of [1, 4, 11, 12]) {
      const sowings = comingSowings(today, month);
      for (const { season, sowOn } of nextSowingDates(today, month, 12)) {
        expect(sowings.sowing(season)).toEqual({ season, sowOn });
        expect(sowings.daysAhead(season)).toBe(daysBetween(today, sowOn));
      }
      expect(sowings.first).toBe(nextSowingDates(today, month, 1)[0]?.season);
    }
  }
});

test('are worked out anew for another day or month, however many were asked for before', () => {
  for (let day = 1; day <= 28; day += 1) {
    const today = `2026-06-${String(day).padStart(2, '0')}`;
    expect(comingSowings(today, 7).daysAhead(2026)).toBe(31 - day);
    expect(comingSowings(today, 8).daysAhead(2026)).toBe(62 - day);
  }
});

test('refuses a month that does not exist', () => {
  expect(() => comingSowings('2026-11-25', 13)).toThrow(RangeError);
});
