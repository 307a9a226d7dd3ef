/**
 * Weighings typed or pasted, a line each: '0 500', '26.5 478.2', '2026-11-20 500' or '2026-11-20 14:30 478,2'.
 */
import { fromEpochDay, isCalendarDate, toEpochDay } from '../../domain/calendar/calendar-date';
import { formNumber } from '../field-schemas';
import { WEIGHT_G } from '../limits';
import { listedWords } from '../number-list';
import { type Read, writtenLines } from './written-lines';

type WeighingLine = { hours: number; weightG: number };
export type Weighings = {
  weighings: WeighingLine[];
  /** the day whose first minute is hour 0, when the lines carry dates; null when they carry hours */
  hourZero: string | null;
};

/** More lines than anybody weighs a jar; a whole logger file is not for this box. */
const MOST_WEIGHINGS = 200;
/** Fifty years of hours: beyond it somebody typed a year as an hour. */
const MOST_HOURS = 438_300;

const TIME = /^([01]?\d|2[0-3]):([0-5]\d)$/;

/**
 * Reads weighings.
 *
 * @param text  a line each: hours or a date (with or without a time), and grams; apart by spaces, tabs, commas with a
 *              space, or semicolons
 * @returns the weighings in the order of time, or what is wrong, naming the line. With dates, hour 0 is midnight of the
 *          earliest day, and a date without a time is taken as noon
 * Checked in tests/schemas/weighings.test.ts
 */
export function readWeighings(text: string): Read<Weighings> {
  const lines = writtenLines(text);
  if (lines.length === 0) return { ok: false, message: 'Write a line for each weighing: hours or date, and grams.' };
  if (lines.length > MOST_WEIGHINGS) return { ok: false, message: `Write at most ${MOST_WEIGHINGS} weighings.` };
  const read: { at: number; weightG: number; dated: boolean; number: number }[] = [];
  for (const { line, number } of lines) {
    const one = readLine(line);
    if (one === null) {
      return {
        ok: false,
        message: `Line ${number}: write hours or a date, then grams, such as "24 478.2" or "2026-11-20 478.2".`,
      };
    }
    if (!(one.weightG >= WEIGHT_G.min && one.weightG <= WEIGHT_G.max)) {
      return { ok: false, message: `Line ${number}: write grams between ${WEIGHT_G.min} and ${WEIGHT_G.max}.` };
    }
    read.push({ ...one, number });
  }
  const dated = read[0]?.dated ?? false;
  const other = read.find((one) => one.dated !== dated);
  if (other) return { ok: false, message: `Line ${other.number}: write either dates or hours in all lines.` };
  const sorted = read.sort((a, b) => a.at - b.at);
  const twice = sorted.find((one, i) => one.at === sorted[i - 1]?.at);
  if (twice) {
    return {
      ok: false,
      message: `Line ${twice.number}: this is the same time as another line. Write the time of day with the date.`,
    };
  }
  const zero = dated ? Math.floor((sorted[0]?.at ?? 0) / 24) * 24 : 0;
  if ((sorted.at(-1)?.at ?? 0) - (sorted[0]?.at ?? 0) > MOST_HOURS) {
    return { ok: false, message: 'The weighings are more than fifty years apart: check the times.' };
  }
  return {
    ok: true,
    value: {
      weighings: sorted.map(({ at, weightG }) => ({ hours: at - zero, weightG })),
      hourZero: dated ? fromEpochDay(zero / 24) : null,
    },
  };
}

function readLine(line: string): { at: number; weightG: number; dated: boolean } | null {
  const words = listedWords(line.trim().replace(/\s*g$/i, ''));
  const weightG = formNumber(words.at(-1), 'g');
  if (typeof weightG !== 'number' || !Number.isFinite(weightG)) return null;
  const [first, time] = words;
  if (isCalendarDate(first)) {
    if (words.length === 2) return { at: toEpochDay(first) * 24 + 12, weightG, dated: true };
    const [, hour, minute] = (words.length === 3 && TIME.exec(time ?? '')) || [];
    if (hour === undefined || minute === undefined) return null;
    return { at: toEpochDay(first) * 24 + Number(hour) + Number(minute) / 60, weightG, dated: true };
  }
  const hours = formNumber(first, 'h');
  if (words.length !== 2 || typeof hours !== 'number' || !Number.isFinite(hours)) return null;
  return { at: hours, weightG, dated: false };
}
