/**
 * Dates as people type them, brought to 'YYYY-MM-DD'. Whether 03/04/2019 is April or March is decided over the whole
 * column: month-first only when some value proves it and none contradicts, otherwise day-first.
 *
 * Dates that say less than a day are kept at the middle of what they say (a year at 1 July, a month at the 15th) with
 * their precision beside them. The middle makes the expected error smallest and favours neither older nor younger
 * seed; 31 December would make every such lot look half a year too young.
 */
import { isCalendarDate } from '../calendar/calendar-date';
import { monthFromName } from './month-names';

export type DatePrecision = 'day' | 'month' | 'year';
export type DateOrder = 'day-first' | 'month-first';

export interface DateFormat {
  /** null when the column contradicts itself: then dates that could be read both ways are not read */
  order: DateOrder | null;
  /** proved by the column; chosen by the steward; hinted by the rest of the file; assumed; mixed; or none is needed */
  basis: 'proved' | 'chosen' | 'hinted' | 'assumed' | 'mixed' | 'not-needed';
  /** every value is a day number as spreadsheet programs keep dates inside */
  serials: boolean;
  /** sentences for the steward */
  notes: string[];
}

export type ParsedDate =
  | { ok: true; date: string; precision: DatePrecision }
  | { ok: false; reason: 'not-a-date' | 'impossible' | 'ambiguous' };

type Shape =
  | { kind: 'fixed'; year: number; month: number; day: number }
  | { kind: 'month'; year: number; month: number }
  | { kind: 'year'; year: number }
  | { kind: 'either'; first: number; second: number; year: number };

// 1900-based day numbers of 1927-05-18 to 2064-04-08; five digits, so that years and counts are not taken for them.
const FIRST_SERIAL = 10_000;
const LAST_SERIAL = 60_000;
// Day 25569 is 1970-01-01 (ECMA-376 part 1, 18.17.4.1: serial 1 is 1900-01-01, with a 29 February 1900 counted in).
const SERIAL_OF_1970 = 25_569;
const MS_PER_DAY = 86_400_000;

const TIME_BEHIND = /[T ]\s*\d{1,2}:\d{2}(?::\d{2}(?:\.\d{1,9})?)?\s*(?:[AaPp]\.?[Mm]\.?|Z|[+-]\d{2}:?\d{2})?$/;
const YEAR_FIRST = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})\.?$/;
const COMPACT = /^(\d{4})(\d{2})(\d{2})$/;
const THREE_PARTS = /^(\d{1,2})\s?([-/.])\s?(\d{1,2})\s?\2\s?(\d{4}|\d{2})\.?$/;
const YEAR_MONTH = /^(\d{4})([-/.])(0?[1-9]|1[0-2])$/;
const MONTH_YEAR = /^(\d{1,2})[-/.](\d{4})$/;
const YEAR = /^\d{4}$/;
const SERIAL = /^\d{5}(?:[.,]\d{1,10})?$/;
const DAY_NAME_YEAR =
  /^(\d{1,2})(?:st|nd|rd|th|\.|er)?[\s\-/.]*(?:de |of )?(\p{L}{3,10})\.?[\s,\-/.]*(?:de )?(\d{4}|\d{2})$/u;
const NAME_DAY_YEAR = /^(\p{L}{3,10})\.?[\s-]*(\d{1,2})(?:st|nd|rd|th)?(?:,\s*|[\s-]+)(\d{4}|\d{2})$/u;
const NAME_YEAR = /^(\p{L}{3,10})\.?[\s,\-/.]*(?:de )?(\d{4}|['’]?\d{2})$/u;
const YEAR_NAME = /^(\d{4})[\s,\-/.]*(\p{L}{3,10})\.?$/u;
const YEAR_NAME_DAY = /^(\d{4})[\s,\-/.]*(\p{L}{3,10})\.?[\s,\-/.]*(\d{1,2})$/u;

// Two-digit years as POSIX strptime reads them: 69-99 are 1900s. A date it puts into the future is refused later.
function fullYear(text: string): number {
  const digits = text.replace(/\D/g, '');
  const year = Number(digits);
  if (digits.length === 4) return year;
  return year >= 69 ? 1900 + year : 2000 + year;
}

function namedShape(text: string): Shape | null {
  const dayFirst = DAY_NAME_YEAR.exec(text);
  if (dayFirst) {
    const month = monthFromName(dayFirst[2] ?? '');
    return month ? { kind: 'fixed', year: fullYear(dayFirst[3] ?? ''), month, day: Number(dayFirst[1]) } : null;
  }
  const nameFirst = NAME_DAY_YEAR.exec(text);
  if (nameFirst) {
    const month = monthFromName(nameFirst[1] ?? '');
    return month ? { kind: 'fixed', year: fullYear(nameFirst[3] ?? ''), month, day: Number(nameFirst[2]) } : null;
  }
  const yearNameDay = YEAR_NAME_DAY.exec(text);
  if (yearNameDay) {
    const month = monthFromName(yearNameDay[2] ?? '');
    return month ? { kind: 'fixed', year: Number(yearNameDay[1]), month, day: Number(yearNameDay[3]) } : null;
  }
  const nameYear = NAME_YEAR.exec(text);
  if (nameYear) {
    const month = monthFromName(nameYear[1] ?? '');
    return month ? { kind: 'month', year: fullYear(nameYear[2] ?? ''), month } : null;
  }
  const yearName = YEAR_NAME.exec(text);
  const month = yearName && monthFromName(yearName[2] ?? '');
  return yearName && month ? { kind: 'month', year: Number(yearName[1]), month } : null;
}

function shapeOf(cell: string): Shape | null {
  const text = cell.trim().replace(TIME_BEHIND, '').trim();
  if (text.length < 4 || text.length > 40) return null;
  if (YEAR.test(text)) return { kind: 'year', year: Number(text) };
  const iso = YEAR_FIRST.exec(text) ?? COMPACT.exec(text);
  if (iso) return { kind: 'fixed', year: Number(iso[1]), month: Number(iso[2]), day: Number(iso[3]) };
  const three = THREE_PARTS.exec(text);
  if (three) {
    return { kind: 'either', first: Number(three[1]), second: Number(three[3]), year: fullYear(three[4] ?? '') };
  }
  const yearMonth = YEAR_MONTH.exec(text);
  if (yearMonth) {
    const [year, month] = [Number(yearMonth[1]), Number(yearMonth[3])];
    // 2010/11 is more often the season from 2010 to 2011 than November.
    const isSeason = yearMonth[2] === '/' && month === (year + 1) % 100;
    return isSeason ? null : { kind: 'month', year, month };
  }
  const monthYear = MONTH_YEAR.exec(text);
  if (monthYear) return { kind: 'month', year: Number(monthYear[2]), month: Number(monthYear[1]) };
  return namedShape(text);
}

function isSerial(text: string): boolean {
  if (!SERIAL.test(text)) return false;
  const days = Number(text.slice(0, 5));
  return days >= FIRST_SERIAL && days <= LAST_SERIAL;
}

function dateOfSerial(text: string): string {
  return new Date((Number(text.slice(0, 5)) - SERIAL_OF_1970) * MS_PER_DAY).toISOString().slice(0, 10);
}

/**
 * Decides over a whole column how its dates are written.
 *
 * @param values   the column's cells; blanks are passed over
 * @param options.hint  the order that other columns of the file prove; taken when this column proves nothing
 * @param options.chosen  what the steward says; taken where the column proves nothing or contradicts itself
 * @returns the order, on what it rests, whether the column holds day numbers, and sentences for the steward.
 *   Month-first needs a second part over 12 and no first part over 12; without proof and hint, day-first is assumed.
 * Checked in tests/domain/spreadsheet/date-format.test.ts
 */
export function decideDateFormat(
  values: readonly string[],
  options: { hint?: DateOrder | null; chosen?: DateOrder | null } = {},
): DateFormat {
  let filled = 0;
  let serialCount = 0;
  let dayFirst = 0;
  let monthFirst = 0;
  let open = 0;
  let example = '';
  for (const value of values) {
    const text = value.trim();
    if (text === '') continue;
    filled += 1;
    if (isSerial(text)) {
      serialCount += 1;
      continue;
    }
    const shape = shapeOf(text);
    if (shape?.kind !== 'either') continue;
    if (shape.first > 12 && shape.second <= 12) dayFirst += 1;
    else if (shape.second > 12 && shape.first <= 12) monthFirst += 1;
    else if (shape.first <= 12 && shape.first !== shape.second) {
      open += 1;
      example ||= text;
    }
  }

  if (filled > 0 && serialCount === filled) {
    const first = values.find((value) => value.trim() !== '')?.trim() ?? '';
    const note = `Day numbers as spreadsheet programs keep them were read as dates: ${first} is ${dateOfSerial(first)}.`;
    return { order: null, basis: 'not-needed', serials: true, notes: [note] };
  }
  const found = { serials: false };
  const isOpen = dayFirst > 0 === monthFirst > 0 && open > 0;
  if (isOpen && options.chosen) return { ...found, order: options.chosen, basis: 'chosen', notes: [] };
  if (dayFirst > 0 && monthFirst > 0) {
    const note = `Some dates have the day first (${dayFirst}) and some the month first (${monthFirst}); ${open} that could be either are not read.`;
    return { ...found, order: null, basis: 'mixed', notes: [note] };
  }
  if (dayFirst > 0) return { ...found, order: 'day-first', basis: 'proved', notes: [] };
  if (monthFirst > 0) return { ...found, order: 'month-first', basis: 'proved', notes: [] };
  if (open === 0) return { ...found, order: 'day-first', basis: 'not-needed', notes: [] };
  const order = options.hint ?? 'day-first';
  const reading = parseDate(example, { ...found, order, basis: 'assumed', notes: [] });
  const as = `${example} as ${reading.ok ? reading.date : 'no date'}`;
  const how = order === 'day-first' ? 'day first' : 'month first';
  const why = options.hint ? 'as in the rest of the file' : 'because nothing shows the order; check that this is right';
  return {
    ...found,
    order,
    basis: options.hint ? 'hinted' : 'assumed',
    notes: [`Dates were read with the ${how} (${as}), ${why}.`],
  };
}

function dated(year: number, month: number, day: number, precision: DatePrecision): ParsedDate {
  const [mm, dd] = [month, day].map((part) => String(part).padStart(2, '0'));
  const date = `${year}-${mm}-${dd}`;
  return isCalendarDate(date) ? { ok: true, date, precision } : { ok: false, reason: 'impossible' };
}

/**
 * Reads one cell by its column's convention.
 *
 * @param text    the cell, not blank; a time of day behind the date is dropped
 * @param format  from decideDateFormat over the whole column
 * @returns the calendar date and how much of it was said: 'day', 'month' (given as the 15th) or 'year' (given as
 *   1 July); or that it is not a date, that the calendar has no such day, or that its order stays open
 * Checked in tests/domain/spreadsheet/date-format.test.ts
 */
export function parseDate(text: string, format: DateFormat): ParsedDate {
  if (format.serials && isSerial(text.trim())) return { ok: true, date: dateOfSerial(text.trim()), precision: 'day' };
  const shape = shapeOf(text);
  if (!shape) return { ok: false, reason: 'not-a-date' };
  if (shape.kind === 'year') return dated(shape.year, 7, 1, 'year');
  if (shape.kind === 'month') return dated(shape.year, shape.month, 15, 'month');
  if (shape.kind === 'fixed') return dated(shape.year, shape.month, shape.day, 'day');

  const { first, second, year } = shape;
  if (format.order === 'month-first') return dated(year, first, second, 'day');
  if (format.order === 'day-first') return dated(year, second, first, 'day');
  if (first === second || first > 12) return dated(year, second, first, 'day');
  if (second > 12) return dated(year, first, second, 'day');
  return { ok: false, reason: 'ambiguous' };
}
