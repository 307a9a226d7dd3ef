/**
 * From ageing to the calendar: on which day a lot has lost so many probits. Ahead of today it goes on losing at the rate
 * of its present store; behind today it is taken to have lost evenly since the last known point.
 */
import { addDays, type CalendarDate, daysBetween } from '../calendar/calendar-date';

/** Later than this nobody plans, and calendar dates end at the year 9999. */
const FARTHEST_DAYS = 365_250;

/** A lot's ageing as two points and a rate. Probits of the published equation. */
export interface Decline {
  today: CalendarDate;
  /** probits lost up to today, >= 0 */
  probitsLostNow: number;
  /** probits lost per day in the present store, >= 0 */
  probitsPerDay: number;
  /** an earlier day (the last test, or the harvest) and what was lost by then, 0 <= lost <= probitsLostNow */
  since: { on: CalendarDate; probitsLost: number };
}

/**
 * Days from today until a lot has lost this many probits: negative when it lost them before today.
 *
 * @param decline      the lot's ageing
 * @param probitsLost  any number; below what was lost at `since` it answers with that day
 * @returns days, not rounded; Infinity when the store ages the seed too slowly to get there within 1000 years
 * Checked in tests/domain/regrow/decline-dates.test.ts
 */
export function daysUntilLost(decline: Decline, probitsLost: number): number {
  const { today, probitsLostNow, probitsPerDay, since } = decline;
  if (probitsLost > probitsLostNow) {
    const days = (probitsLost - probitsLostNow) / probitsPerDay;
    return days <= FARTHEST_DAYS ? days : Number.POSITIVE_INFINITY;
  }
  const daysSince = daysBetween(since.on, today);
  const lostSince = probitsLostNow - since.probitsLost;
  if (lostSince <= 0) return -daysSince;
  const share = Math.min(1, (probitsLostNow - probitsLost) / lostSince);
  return share === 0 ? 0 : -daysSince * share;
}

/**
 * The day on which a lot has lost this many probits.
 *
 * @param decline      the lot's ageing
 * @param probitsLost  any number
 * @returns calendar date; null when it does not happen within 1000 years
 * Checked in tests/domain/regrow/decline-dates.test.ts
 */
export function dateWhenLost(decline: Decline, probitsLost: number): CalendarDate | null {
  const days = daysUntilLost(decline, probitsLost);
  // Rounded down: a date that warns may come a day early, never a day late.
  return Number.isFinite(days) ? addDays(decline.today, Math.floor(days)) : null;
}
