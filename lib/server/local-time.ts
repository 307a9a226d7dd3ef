import { format, isValid, parse } from 'date-fns';
import { environment } from './env';
import { today } from './today';

/**
 * Moments of the day as the seed room's clock shows them: this computer's time zone. The only place that reads the clock
 * for a time of day; a test that fixes today has the hour of its own run on that day.
 */
const MINUTE = "yyyy-MM-dd'T'HH:mm";

/** This moment, seconds since 1970-01-01T00:00:00Z. */
export function nowEpochSeconds(): number {
  const now = new Date();
  if (environment().HILUM_TODAY === undefined) return Math.floor(now.getTime() / 1000);
  const fixed = parse(today(), 'yyyy-MM-dd', now);
  fixed.setHours(now.getHours(), now.getMinutes(), now.getSeconds());
  return Math.floor(fixed.getTime() / 1000);
}

/**
 * @param text  'YYYY-MM-DDTHH:mm' by the seed room's clock, as a browser's box for date and time sends it
 * @returns seconds since 1970-01-01T00:00:00Z; null when there is no such moment
 * Checked in tests/server/local-time.test.ts
 */
export function epochSecondsOf(text: string): number | null {
  const moment = parse(text, MINUTE, new Date(0));
  return isValid(moment) && format(moment, MINUTE) === text ? moment.getTime() / 1000 : null;
}

/** The same the other way round: 'YYYY-MM-DDTHH:mm', seconds dropped. */
export const localMinute = (epochSeconds: number): string => format(epochSeconds * 1000, MINUTE);

/** The calendar date of a moment, 'YYYY-MM-DD'. */
export const localDate = (epochSeconds: number): string => localMinute(epochSeconds).slice(0, 10);

/** When a day began, seconds since 1970-01-01T00:00:00Z. */
export const startOfLocalDay = (date: string): number => parse(date, 'yyyy-MM-dd', 0).getTime() / 1000;
