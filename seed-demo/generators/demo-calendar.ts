/**
 * The demo's dates, counted back from today: season 0 is the last one whose harvest is in, season 12 was twelve years
 * before it. So the demo never grows old.
 */
import { type CalendarDate, yearOf } from '../../lib/domain/calendar/calendar-date';

/** From this day on the year's own harvest counts as in. */
const HARVEST_IS_IN = '11-01';

export interface DemoCalendar {
  today: CalendarDate;
  /** the year of season 0 */
  lastHarvestYear: number;
  /** @returns that day of the season's year, or today when it has not come yet */
  dayIn(season: number, monthAndDay: string): CalendarDate;
  /** @returns the date itself, or today when it has not come yet */
  notAfterToday(date: CalendarDate): CalendarDate;
}

/**
 * @param today  calendar date
 * Checked in tests/seed-demo/demo-calendar.test.ts
 */
export function demoCalendar(today: CalendarDate): DemoCalendar {
  const lastHarvestYear = today.slice(5) >= HARVEST_IS_IN ? yearOf(today) : yearOf(today) - 1;
  const notAfterToday = (date: CalendarDate) => (date > today ? today : date);
  return {
    today,
    lastHarvestYear,
    dayIn: (season, monthAndDay) => notAfterToday(`${lastHarvestYear - season}-${monthAndDay}`),
    notAfterToday,
  };
}
