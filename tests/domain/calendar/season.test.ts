import { expect, test } from 'vitest';
import { nextSeason, nextSowingDates, seasonOf } from '../../../lib/domain/calendar/season';

test.each([
  ['2027-03-31', 4, 2026],
  ['2027-04-01', 4, 2027],
  ['2027-12-31', 4, 2027],
  ['2027-07-10', 10, 2026],
  ['2026-10-01', 10, 2026],
  ['2027-01-01', 1, 2027],
])('%s, sowing in month %d, lies in season %d', (date, sowingMonth, season) => {
  expect(seasonOf(date, sowingMonth)).toBe(season);
});

test.each([
  ['2027-03-31', 4, 2027],
  ['2027-04-30', 4, 2027],
  ['2027-05-01', 4, 2028],
  ['2026-12-31', 12, 2026],
  ['2027-02-01', 1, 2028],
])('on %s, sowing in month %d, season %d can still be sown', (today, sowingMonth, season) => {
  expect(nextSeason(today, sowingMonth)).toBe(season);
});

test('coming sowings start on the first of the month, or today while the month is running', () => {
  expect(nextSowingDates('2026-11-25', 4, 3)).toEqual([
    { season: 2027, sowOn: '2027-04-01' },
    { season: 2028, sowOn: '2028-04-01' },
    { season: 2029, sowOn: '2029-04-01' },
  ]);
  expect(nextSowingDates('2026-04-20', 4, 2)).toEqual([
    { season: 2026, sowOn: '2026-04-20' },
    { season: 2027, sowOn: '2027-04-01' },
  ]);
  expect(nextSowingDates('2026-04-20', 4, 0)).toEqual([]);
});

test('refuses months outside 1 to 12, negative counts and dates that do not exist', () => {
  expect(() => seasonOf('2026-04-20', 0)).toThrow(/sowingMonth.*got 0/);
  expect(() => nextSeason('2026-04-20', 13)).toThrow(/sowingMonth/);
  expect(() => nextSeason('2026-04-31', 4)).toThrow(RangeError);
  expect(() => nextSowingDates('2026-04-20', 4, -1)).toThrow(/count/);
});
