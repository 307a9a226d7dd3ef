/** Calendar dates as 'YYYY-MM-DD' text: they sort as text and have no time zone that could shift them by a day. */

const MONTH_LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * Number of days in a month of the Gregorian calendar.
 *
 * @param year   four-digit year
 * @param month  1-12
 * @returns 28-31, or 0 when there is no such month
 * Checked in tests/domain/spreadsheet/calendar-date.test.ts
 */
export function daysInMonth(year: number, month: number): number {
  const isLeap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  return month === 2 && isLeap ? 29 : (MONTH_LENGTHS[month - 1] ?? 0);
}

/**
 * Writes a date, if there is one with these parts.
 *
 * @param year   1000-9999
 * @param month  1-12
 * @param day    1 to the month's length
 * @returns 'YYYY-MM-DD', or null when the calendar has no such day
 * Checked in tests/domain/spreadsheet/calendar-date.test.ts
 */
export function calendarDateOf(year: number, month: number, day: number): string | null {
  const whole = Number.isInteger(year) && Number.isInteger(month) && Number.isInteger(day);
  if (!whole || year < 1000 || year > 9999 || day < 1 || day > daysInMonth(year, month)) return null;
  return `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}

/**
 * Whether a text is a calendar date that exists.
 *
 * @param text  any text
 * @returns true for 'YYYY-MM-DD' naming a real day (not 2019-02-31)
 * Checked in tests/domain/spreadsheet/calendar-date.test.ts
 */
export function isCalendarDate(text: string): boolean {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  return parts !== null && calendarDateOf(Number(parts[1]), Number(parts[2]), Number(parts[3])) === text;
}
