/** How long a stretch of storage is, as a steward says it. */
import { HORIZON_DAYS } from './time-to-threshold';

const DAYS_PER_YEAR = 365.25;
const DAYS_PER_MONTH = DAYS_PER_YEAR / 12;

/**
 * A length of time in words: days, months, then years; beyond 200 years only that it is beyond.
 *
 * @param days  >= 0; Infinity is beyond
 * @returns such as '20 days', '7 months', '4.5 years', '31 years', 'more than 200 years'
 * @throws RangeError when days is negative or not a number
 * Checked in tests/domain/longevity/years-in-words.test.ts
 */
export function yearsInWords(days: number): string {
  if (!(days >= 0)) throw new RangeError(`yearsInWords: days must not be negative, got ${days}`);
  if (days > HORIZON_DAYS) return `more than ${Math.round(HORIZON_DAYS / DAYS_PER_YEAR)} years`;
  if (Math.round(days) < 2 * DAYS_PER_MONTH) return counted(Math.round(days), 'day');
  const months = Math.round(days / DAYS_PER_MONTH);
  if (months < 24) return counted(months, 'month');
  const years = days / DAYS_PER_YEAR;
  return `${years < 10 ? years.toFixed(1).replace('.0', '') : Math.round(years)} years`;
}

const counted = (count: number, thing: string): string => `${count} ${thing}${count === 1 ? '' : 's'}`;
