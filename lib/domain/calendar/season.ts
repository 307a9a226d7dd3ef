/**
 * Seasons. A season is named by the calendar year in which its sowing happens, also when the harvest falls in the next
 * year: garlic sown in October 2026 and lifted in July 2027 belongs to season 2026. Sowing takes one month, given per
 * bank or crop; the season is open for sowing until the end of that month.
 */
import { type CalendarDate, monthOf, toEpochDay, yearOf } from './calendar-date';

/** One coming sowing: the season's year, and the first day on which it can be sown. */
export interface SowingDate {
  season: number;
  sowOn: CalendarDate;
}

/**
 * Season under way on a date: the year of the latest sowing month that has begun.
 *
 * @param date         calendar date
 * @param sowingMonth  month in which the bank or crop sows, 1 to 12
 * @returns the year of that season's sowing; with sowing in April, '2027-03-31' lies in season 2026
 * @throws RangeError when the date does not exist or the month is not 1 to 12
 * Checked in tests/domain/calendar/season.test.ts
 */
export function seasonOf(date: CalendarDate, sowingMonth: number): number {
  requireSowingMonth('seasonOf', sowingMonth);
  toEpochDay(date); // refuses a date that does not exist
  return monthOf(date) >= sowingMonth ? yearOf(date) : yearOf(date) - 1;
}

/**
 * The next season that can still be sown: this year's until its sowing month has ended, then next year's.
 *
 * @param today        calendar date
 * @param sowingMonth  1 to 12
 * @returns the year of that season's sowing
 * @throws RangeError when the date does not exist or the month is not 1 to 12
 * Checked in tests/domain/calendar/season.test.ts
 */
export function nextSeason(today: CalendarDate, sowingMonth: number): number {
  requireSowingMonth('nextSeason', sowingMonth);
  toEpochDay(today); // refuses a date that does not exist
  return monthOf(today) <= sowingMonth ? yearOf(today) : yearOf(today) + 1;
}

/**
 * The coming sowings, soonest first.
 *
 * @param today        calendar date
 * @param sowingMonth  1 to 12
 * @param count        how many, integer >= 0
 * @returns season and first sowing day of each: the first of the sowing month, or today while that month is running
 * @throws RangeError when an argument is outside its range
 * Checked in tests/domain/calendar/season.test.ts
 */
export function nextSowingDates(today: CalendarDate, sowingMonth: number, count: number): SowingDate[] {
  if (!Number.isInteger(count) || count < 0) {
    throw new RangeError(`nextSowingDates: count must be an integer >= 0, got ${count}`);
  }
  const first = nextSeason(today, sowingMonth);
  return Array.from({ length: count }, (_, index) => sowingOf(first + index, today, sowingMonth));
}

/**
 * The sowing of one season: the first day of its sowing month, or today where that lies behind.
 *
 * @param season       year, this season or a later one
 * @param today        calendar date
 * @param sowingMonth  1 to 12
 * @returns season and first sowing day
 * Checked through nextSowingDates in tests/domain/calendar/season.test.ts
 */
export function sowingOf(season: number, today: CalendarDate, sowingMonth: number): SowingDate {
  const firstOfMonth = sowingStart(season, sowingMonth);
  return { season, sowOn: firstOfMonth < today ? today : firstOfMonth };
}

/** First day of a season's sowing month, 'YYYY-MM-01'. */
function sowingStart(season: number, sowingMonth: number): CalendarDate {
  return `${String(season).padStart(4, '0')}-${String(sowingMonth).padStart(2, '0')}-01`;
}

function requireSowingMonth(caller: string, sowingMonth: number): void {
  if (!Number.isInteger(sowingMonth) || sowingMonth < 1 || sowingMonth > 12) {
    throw new RangeError(`${caller}: sowingMonth must be an integer from 1 to 12, got ${sowingMonth}`);
  }
}
