/**
 * The coming sowings as days ahead. All lots of a crop are judged on one day for the same sowings, so the dates are worked out
 * once and kept: calendar dates are text, and reading them took longer than the sums made with them.
 */
import { type CalendarDate, daysBetween } from '../calendar/calendar-date';
import { nextSeason, type SowingDate, sowingOf } from '../calendar/season';

export interface ComingSowings {
  /** year of the next season */
  first: number;
  /** the sowing of a season, not before the first */
  sowing(season: number): SowingDate;
  /** days from today to that sowing */
  daysAhead(season: number): number;
}

/** A memo, not a state: it follows from day and month alone. One for each crop's sowing month, on one day. */
const MOST_KEPT = 24;
const kept = new Map<string, ComingSowings>();

/**
 * @param today        calendar date
 * @param sowingMonth  1 to 12
 * @returns the next season, and when each season is sown
 * @throws RangeError when the date does not exist or the month is not 1 to 12
 * Checked against `nextSowingDates` in tests/domain/regrow/coming-sowings.test.ts
 */
export function comingSowings(today: CalendarDate, sowingMonth: number): ComingSowings {
  const key = `${today} ${sowingMonth}`;
  let sowings = kept.get(key);
  if (!sowings) {
    sowings = sowingsFrom(today, sowingMonth);
    if (kept.size >= MOST_KEPT) kept.clear();
    kept.set(key, sowings);
  }
  return sowings;
}

function sowingsFrom(today: CalendarDate, sowingMonth: number): ComingSowings {
  const first = nextSeason(today, sowingMonth);
  const known: { sowing: SowingDate; daysAhead: number }[] = [];
  const at = (season: number) => {
    const index = season - first;
    let found = known[index];
    if (!found) {
      const sowing = sowingOf(season, today, sowingMonth);
      found = { sowing, daysAhead: daysBetween(today, sowing.sowOn) };
      known[index] = found;
    }
    return found;
  };
  return { first, sowing: (season) => at(season).sowing, daysAhead: (season) => at(season).daysAhead };
}
