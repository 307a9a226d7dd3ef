/**
 * Times of day as loggers write them, to seconds on the logger's own clock. One pass over the characters, no regular
 * expressions and no intermediate strings, because a file has half a million of them.
 *
 * What is understood: numbers or month names between / - . or spaces, a year of two or four digits, 20240305T130500,
 * seconds or not, fractions of a second (cut off), AM and PM, names of weekdays (passed over), an offset at the end
 * (Z, UTC, GMT, +01:00, -0500, +1).
 */
import { monthFromName } from '../spreadsheet/month-names';
import type { LoggerDateOrder } from './logger-layout';

/** What a time reader fills in. */
export interface WallTime {
  /** seconds since 1970-01-01T00:00 on the clock that wrote it, whatever its zone */
  seconds: number;
  /** what the text says of its zone, seconds east of UTC; null when it says nothing */
  offsetSeconds: number | null;
}

export interface WallTimeReader {
  /**
   * Reads a date with its time.
   *
   * @param text, from, to  where it stands: [from, to)
   * @param timeFrom, timeTo  where the time stands when it has a column of its own; -1 when date and time are one
   * @param into  filled when the answer is true
   * @returns false when this is no date with a time, or the calendar or the clock has no such moment
   */
  read(text: string, from: number, to: number, timeFrom: number, timeTo: number, into: WallTime): boolean;
}

const SECONDS_PER_DAY = 86_400;
const MOST_NUMBERS = 12;
/** Digits of a moment counted in seconds (2001 to 2286), and in thousandths. */
const EPOCH_DIGITS = { seconds: 10, milliseconds: 13 };
/** Day numbers of 1954 to 2118; day 25569 is 1970-01-01 (ECMA-376 part 1, 18.17.4.1). */
const DAY_NUMBER = { min: 20_000, max: 80_000, of1970: 25_569 };
/** No logger is older, and a clock that was reset stands at 1970, 1980 or 2000; see read-logger for those. */
const EARLIEST_YEAR = 1970;
const LATEST_YEAR = 2199;
const WEEKDAYS = new Set(
  'mon monday tue tues tuesday wed wednesday thu thur thurs thursday fri friday sat saturday sun sunday mo di mi do fr sa so montag dienstag mittwoch donnerstag freitag samstag sonntag lun mar mer jeu ven sam dim'.split(
    ' ',
  ),
);
const FILLERS = new Set(['t', 'st', 'nd', 'rd', 'th', 'de', 'of', 'at', 'um', 'uhr', 'h', 'm', 's']);
const [SPACE, PLUS, COMMA, MINUS, DOT, COLON, ZERO, NINE] = [32, 43, 44, 45, 46, 58, 48, 57];
const TRUE_MINUS = 0x2212;

/**
 * A reader for dates in one order. It keeps scratch space between calls: one reader serves one file.
 *
 * @param order  in which year, month and day follow one another; a year of four digits in front is believed anyway
 * Checked in tests/domain/logger/wall-time.test.ts
 */
export function wallTimeReader(order: LoggerDateOrder): WallTimeReader {
  if (order === 'epoch-seconds') return { read: readEpoch };
  if (order === 'day-number') return { read: readDayNumber };
  const numbers = new Float64Array(MOST_NUMBERS);
  const digits = new Uint8Array(MOST_NUMBERS);
  const before = new Uint16Array(MOST_NUMBERS);
  let count = 0;
  let monthAt = -1;
  let meridiem = 0;
  let saysUtc = false;
  let lastDay = -1;
  let lastEpochDay = 0;

  /** Collects numbers and words; false at anything that belongs to no time. */
  function scan(text: string, from: number, to: number): boolean {
    let separator = SPACE;
    for (let at = from; at < to; ) {
      const code = text.charCodeAt(at);
      if (code >= ZERO && code <= NINE) {
        if (count === MOST_NUMBERS) return false;
        let value = 0;
        const start = at;
        for (; at < to; at += 1) {
          const digit = text.charCodeAt(at) - ZERO;
          if (digit < 0 || digit > 9) break;
          value = value * 10 + digit;
        }
        if (at - start > 14) return false;
        numbers[count] = value;
        digits[count] = at - start;
        before[count] = separator;
        count += 1;
        separator = SPACE;
      } else if (isLetter(code)) {
        const start = at;
        while (at < to && (isLetter(text.charCodeAt(at)) || (text.charCodeAt(at) === DOT && at - start === 1))) at += 1;
        if (!word(text.slice(start, at).toLowerCase().replaceAll('.', ''))) return false;
        separator = SPACE;
      } else {
        if (code === TRUE_MINUS) separator = MINUS;
        else if (code !== SPACE || separator === SPACE) separator = code;
        if (code > 126 && code !== TRUE_MINUS && code !== 0xa0 && code !== 0x202f) return false;
        at += 1;
      }
    }
    return true;
  }

  function word(name: string): boolean {
    if (name === 'am' || name === 'pm') {
      meridiem = name === 'am' ? 1 : 2;
      return count > 0;
    }
    if (name === 'z' || name === 'utc' || name === 'gmt') {
      saysUtc = true;
      return count > 0;
    }
    if (FILLERS.has(name)) return true;
    const month = monthAt < 0 && count < 3 ? monthFromName(name) : null;
    if (month !== null && !(count === 0 && WEEKDAYS.has(name) && name !== 'mar')) {
      monthAt = count;
      numbers[count] = month;
      digits[count] = 0;
      before[count] = SPACE;
      count += 1;
      return true;
    }
    return WEEKDAYS.has(name);
  }

  /** The first three numbers as a day since 1970-01-01, or -1; a compact 20240305 is taken apart first. */
  function epochDay(): number {
    const [a, b, c] = [numbers[0] as number, numbers[1] as number, numbers[2] as number];
    let year: number;
    let month: number;
    let day: number;
    if (monthAt >= 0) {
      month = numbers[monthAt] as number;
      const [first, second] = monthAt === 0 ? [1, 2] : monthAt === 1 ? [0, 2] : [0, 1];
      const yearFirst = digits[first] === 4;
      year = numbers[yearFirst ? first : second] as number;
      day = numbers[yearFirst ? second : first] as number;
      if (digits[yearFirst ? first : second] === 2) year += 2000;
    } else {
      const yearFirst = digits[0] === 4 || (order === 'year-month-day' && digits[2] !== 4);
      if (yearFirst) [year, month, day] = [a, b, c];
      else if (order === 'month-day-year') [month, day, year] = [a, b, c];
      else [day, month, year] = [a, b, c];
      if (digits[yearFirst ? 0 : 2] === 2) year += 2000;
    }
    if (year < EARLIEST_YEAR || year > LATEST_YEAR || month < 1 || month > 12 || day < 1 || day > 31) return -1;
    // Row after row has the same date.
    const key = (year * 16 + month) * 32 + day;
    if (key !== lastDay) {
      const date = new Date(Date.UTC(year, month - 1, day));
      if (date.getUTCDate() !== day) return -1;
      lastDay = key;
      lastEpochDay = date.getTime() / (SECONDS_PER_DAY * 1000);
    }
    return lastEpochDay;
  }

  /** 20240305 and 20240305130500 become year, month, day and hour, minute, second. */
  function spread(): void {
    const first = digits[0] as number;
    if (first !== 8 && first !== 12 && first !== 14) return;
    if (numbers[0] === undefined) return;
    const whole = String(numbers[0]).padStart(first, '0');
    const parts = [whole.slice(0, 4), ...(whole.slice(4).match(/../g) ?? [])];
    replaceFirst(0, parts);
    const time = digits[3] as number;
    if (count > 3 && first === 8 && (time === 4 || time === 6)) {
      replaceFirst(3, String(numbers[3]).padStart(time, '0').match(/../g) ?? []);
    }
  }

  function replaceFirst(at: number, parts: string[]): void {
    const more = parts.length - 1;
    if (count + more > MOST_NUMBERS) return;
    numbers.copyWithin(at + more + 1, at + 1, count);
    digits.copyWithin(at + more + 1, at + 1, count);
    before.copyWithin(at + more + 1, at + 1, count);
    parts.forEach((part, index) => {
      numbers[at + index] = Number(part);
      digits[at + index] = part.length;
      before[at + index] = index === 0 ? SPACE : COLON;
    });
    count += more;
  }

  function read(text: string, from: number, to: number, timeFrom: number, timeTo: number, into: WallTime): boolean {
    count = 0;
    monthAt = -1;
    meridiem = 0;
    saysUtc = false;
    if (!scan(text, from, to)) return false;
    if (timeFrom >= 0 && !scan(text, timeFrom, timeTo)) return false;
    if (count > 0 && (digits[0] as number) >= 8) spread();
    if (count < 5) return false;
    const day = epochDay();
    if (day < 0) return false;
    let hour = numbers[3] as number;
    const minute = numbers[4] as number;
    if ((digits[3] as number) > 2 || digits[4] !== 2 || minute > 59) return false;
    let next = 5;
    let second = 0;
    if (next < count && (before[next] === COLON || before[next] === DOT) && digits[next] === 2) {
      second = numbers[next] as number;
      if (second > 59) return false;
      next += 1;
      // A fraction of a second.
      if (next < count && (before[next] === DOT || before[next] === COMMA)) next += 1;
    }
    if (meridiem > 0) {
      if (hour > 12) return false;
      hour = (hour % 12) + (meridiem === 2 ? 12 : 0);
    }
    if (hour > 24 || (hour === 24 && minute + second > 0)) return false;
    let offset: number | null = saysUtc ? 0 : null;
    if (next < count) {
      const sign = before[next];
      if (sign !== PLUS && sign !== MINUS) return false;
      let hours = numbers[next] as number;
      let minutes = 0;
      if (digits[next] === 4) {
        minutes = hours % 100;
        hours = (hours - minutes) / 100;
      } else if (next + 1 < count && before[next + 1] === COLON) {
        next += 1;
        minutes = numbers[next] as number;
      }
      if (next + 1 !== count || hours > 14 || minutes > 59) return false;
      offset = (sign === MINUS ? -1 : 1) * (hours * 3600 + minutes * 60);
    }
    into.seconds = day * SECONDS_PER_DAY + hour * 3600 + minute * 60 + second;
    into.offsetSeconds = offset;
    return true;
  }
  return { read };
}

function readEpoch(text: string, from: number, to: number, _timeFrom: number, _timeTo: number, into: WallTime) {
  const cell = text.slice(from, to).trim();
  if (!/^\d+(?:[.,]\d+)?$/.test(cell)) return false;
  const whole = cell.replace(/[.,].*$/, '');
  const isMilliseconds = whole.length === EPOCH_DIGITS.milliseconds;
  if (!isMilliseconds && whole.length !== EPOCH_DIGITS.seconds) return false;
  into.seconds = isMilliseconds ? Math.floor(Number(whole) / 1000) : Number(whole);
  into.offsetSeconds = 0;
  return true;
}

function readDayNumber(text: string, from: number, to: number, _timeFrom: number, _timeTo: number, into: WallTime) {
  const cell = text.slice(from, to).trim();
  if (!/^\d{5}(?:[.,]\d+)?$/.test(cell)) return false;
  const days = Number(cell.replace(',', '.'));
  if (days < DAY_NUMBER.min || days > DAY_NUMBER.max) return false;
  into.seconds = Math.round((days - DAY_NUMBER.of1970) * SECONDS_PER_DAY);
  into.offsetSeconds = null;
  return true;
}

const isLetter = (code: number) =>
  (code >= 97 && code <= 122) || (code >= 65 && code <= 90) || (code >= 0xc0 && code <= 0x24f);
