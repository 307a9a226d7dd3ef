/**
 * Calendar dates as plain text, 'YYYY-MM-DD': the day on the calendar in the seed room, with no hour and no time zone.
 *
 * Arithmetic goes through whole days since 1970-01-01 in UTC, where every day has 24 hours. Libraries that work on
 * local Date objects would need the machine's time zone, and shift a date by one where midnight does not exist.
 */

/** A calendar date, 'YYYY-MM-DD', years 0001 to 9999. Checked by isCalendarDate; a plain string so that it travels. */
export type CalendarDate = string;

const MILLISECONDS_PER_DAY = 86_400_000;
/** From 1 March of the year 0. */
const DAYS_TO_1970 = 719_468;
const HYPHEN = 45;
const ZERO = 48;

/**
 * Whether a text is a date that exists: '2024-02-29' is, '2023-02-29' and '2024-2-9' are not.
 *
 * @param text  anything
 * @returns true for an existing date in the form 'YYYY-MM-DD', years 0001 to 9999
 * Checked in tests/domain/calendar/calendar-date.test.ts
 */
export function isCalendarDate(text: unknown): text is CalendarDate {
  return typeof text === 'string' && parseEpochDay(text) !== null;
}

/**
 * Whole days since 1970-01-01 (which is 0; earlier dates are negative).
 *
 * @param date  calendar date 'YYYY-MM-DD'
 * @returns integer number of days
 * @throws RangeError when the date does not exist
 * Checked in tests/domain/calendar/calendar-date.test.ts
 */
export function toEpochDay(date: CalendarDate): number {
  const day = parseEpochDay(date);
  if (day === null) throw new RangeError(`toEpochDay: date must be an existing date 'YYYY-MM-DD', got ${date}`);
  return day;
}

/**
 * The calendar date that lies a number of whole days after 1970-01-01: the inverse of toEpochDay.
 *
 * @param epochDay  integer number of days, from 0001-01-01 to 9999-12-31
 * @returns calendar date 'YYYY-MM-DD'
 * @throws RangeError when the argument is not an integer or leaves those years
 * Checked in tests/domain/calendar/calendar-date.test.ts
 */
export function fromEpochDay(epochDay: number): CalendarDate {
  if (!Number.isInteger(epochDay) || epochDay < FIRST_DAY || epochDay > LAST_DAY) {
    throw new RangeError(`fromEpochDay: epochDay must be an integer in [${FIRST_DAY}, ${LAST_DAY}], got ${epochDay}`);
  }
  return new Date(epochDay * MILLISECONDS_PER_DAY).toISOString().slice(0, 10);
}

/**
 * Days from one date to another: 1 from today to tomorrow, negative when `to` is earlier.
 *
 * @param from  calendar date
 * @param to    calendar date
 * @returns integer number of days
 * @throws RangeError when either date does not exist
 * Checked in tests/domain/calendar/calendar-date.test.ts
 */
export function daysBetween(from: CalendarDate, to: CalendarDate): number {
  return toEpochDay(to) - toEpochDay(from);
}

/**
 * The date a number of days later (earlier when negative).
 *
 * @param date  calendar date
 * @param days  integer number of days
 * @returns calendar date
 * @throws RangeError when the date does not exist, days is not an integer, or the result leaves the years 0001-9999
 * Checked in tests/domain/calendar/calendar-date.test.ts
 */
export function addDays(date: CalendarDate, days: number): CalendarDate {
  if (!Number.isInteger(days)) throw new RangeError(`addDays: days must be an integer, got ${days}`);
  return fromEpochDay(toEpochDay(date) + days);
}

/**
 * The same day of the month a number of months later; the last day of that month where it has no such day
 * ('2024-01-31' plus 1 month is '2024-02-29').
 *
 * @param date    calendar date
 * @param months  integer number of months, may be negative
 * @returns calendar date
 * @throws RangeError when the date does not exist, months is not an integer, or the result leaves the years 0001-9999
 * Checked in tests/domain/calendar/calendar-date.test.ts
 */
export function addMonths(date: CalendarDate, months: number): CalendarDate {
  if (!Number.isInteger(months)) throw new RangeError(`addMonths: months must be an integer, got ${months}`);
  toEpochDay(date); // refuses a date that does not exist
  const monthIndex = yearOf(date) * 12 + (monthOf(date) - 1) + months;
  const year = Math.floor(monthIndex / 12);
  const month = monthIndex - year * 12;
  const lastDay = utcDay(year, month + 1, 0);
  const sameDay = utcDay(year, month, Number(date.slice(8, 10)));
  return fromEpochDay(Math.min(sameDay, lastDay));
}

/** Calendar year of a date, 1 to 9999. The date is taken to exist (see isCalendarDate). */
export function yearOf(date: CalendarDate): number {
  return Number(date.slice(0, 4));
}

/** Month of a date, 1 (January) to 12. The date is taken to exist (see isCalendarDate). */
export function monthOf(date: CalendarDate): number {
  return Number(date.slice(5, 7));
}

/**
 * Days since 1970-01-01 of a proleptic Gregorian date; month counts from 0, and 12 is the next January; day may overflow.
 * Counted in years that begin in March, so that the leap day comes last and each month begins at a fixed day.
 */
function utcDay(year: number, month: number, day: number): number {
  const years = month > 1 ? year : year - 1;
  const monthsSinceMarch = (month + 10) % 12;
  const leapDays = Math.floor(years / 4) - Math.floor(years / 100) + Math.floor(years / 400);
  return 365 * years + leapDays + Math.floor((153 * monthsSinceMarch + 2) / 5) + day - 1 - DAYS_TO_1970;
}

const FIRST_DAY = utcDay(1, 0, 1);
const LAST_DAY = utcDay(9999, 11, 31);

function parseEpochDay(text: string): number | null {
  if (text.length !== 10 || text.charCodeAt(4) !== HYPHEN || text.charCodeAt(7) !== HYPHEN) return null;
  const year = 100 * twoDigits(text, 0) + twoDigits(text, 2);
  const month = twoDigits(text, 5);
  const day = twoDigits(text, 8);
  // What is not a digit is NaN, and no comparison holds for that.
  if (!(year >= 1 && month >= 1 && month <= 12 && day >= 1)) return null;
  const epochDay = utcDay(year, month - 1, day);
  return day <= 28 || epochDay <= utcDay(year, month, 0) ? epochDay : null;
}

/** Read by character codes: dates are read by the million when a collection is judged, and a pattern takes ten times as long. */
function twoDigits(text: string, at: number): number {
  const tens = text.charCodeAt(at) - ZERO;
  const ones = text.charCodeAt(at + 1) - ZERO;
  return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? 10 * tens + ones : Number.NaN;
}
