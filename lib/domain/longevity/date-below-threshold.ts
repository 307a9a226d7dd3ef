/**
 * The date on which a lot falls below its threshold, as a distribution: ageing only ever adds up, so the chance of having
 * fallen below by a day is the chance of being below on it, and its quantiles are dates.
 *
 * The date is as uncertain as the lot is; the store is taken to stay as it is.
 */
import { type CalendarDate, fromEpochDay, toEpochDay, yearOf } from '../calendar/calendar-date';
import { type LotPosterior, probabilityBelow } from './lot-model';
import { daysUntilChanceBelow } from './time-to-threshold';

export interface BelowByYear {
  year: number;
  /** chance that the lot falls below in this year: from its first day (or today) to its last */
  chanceInYear: number;
  /** chance that it is below by the end of the year */
  chanceByEnd: number;
}

/**
 * Dates by which the lot has fallen below with given chances.
 *
 * @param posterior      from `fitLot`
 * @param probitsLostNow published ageing up to today, probits, >= 0
 * @param ratePerDay     published ageing per day under the present store, probits per day, >= 0
 * @param threshold      a viability, proportion in (0, 1)
 * @param today          the day from which is counted
 * @param chances        in (0, 1)
 * @returns for each chance the date, 'passed' when the chance is that high already, null when it lies beyond 200 years
 * @throws RangeError when an argument is outside its range
 * Checked against quantiles by dense grid in R and by undoing `probabilityBelow`:
 * tests/domain/longevity/date-below-threshold.test.ts
 */
export function datesBelowThreshold({
  today,
  chances,
  ...question
}: {
  posterior: LotPosterior;
  probitsLostNow: number;
  ratePerDay: number;
  threshold: number;
  today: CalendarDate;
  chances: readonly number[];
}): { chance: number; date: CalendarDate | 'passed' | null }[] {
  const todayDay = toEpochDay(today);
  return chances.map((chance) => {
    const days = daysUntilChanceBelow({ ...question, chance });
    if (days === null) return { chance, date: null };
    return { chance, date: days === 0 ? 'passed' : fromEpochDay(todayDay + Math.ceil(days)) };
  });
}

/**
 * The chance of falling below in each of the coming calendar years.
 *
 * @param posterior  from `fitLot`
 * @param probitsAt  published ageing up to a day (days since 1970-01-01), never falling, probits
 * @param threshold  a viability, proportion in (0, 1)
 * @param today      the first year is what is left of today's
 * @param years      how many, whole, >= 1
 * @returns the chance of being below already, and a row for each year; the chances in the years and `below now` add up to
 *          the last `chanceByEnd`
 * @throws RangeError when years or threshold is outside its range
 * Checked in tests/domain/longevity/date-below-threshold.test.ts
 */
export function chanceBelowByYear({
  posterior,
  probitsAt,
  threshold,
  today,
  years,
}: {
  posterior: LotPosterior;
  probitsAt: (day: number) => number;
  threshold: number;
  today: CalendarDate;
  years: number;
}): { belowNow: number; byYear: BelowByYear[] } {
  if (!(Number.isInteger(years) && years >= 1)) {
    throw new RangeError(`chanceBelowByYear: years must be a whole number of at least 1, got ${years}`);
  }
  const chanceOn = (day: number) => probabilityBelow(posterior, { probitsLost: probitsAt(day), threshold });
  const belowNow = chanceOn(toEpochDay(today));
  const byYear: BelowByYear[] = [];
  let before = belowNow;
  for (let year = yearOf(today); byYear.length < years; year += 1) {
    // A chance may ripple by less than 0.0001 where it should be steady (lot-model.md); a date cannot be taken back.
    const chanceByEnd = Math.max(before, chanceOn(toEpochDay(`${year + 1}-01-01`)));
    byYear.push({ year, chanceInYear: chanceByEnd - before, chanceByEnd });
    before = chanceByEnd;
  }
  return { belowNow, byYear };
}
