import { type CountSchedule, countDays, type NextCount, nextCount } from './count-days';

/**
 * Every count that is still to be made: the one the tray waits for, then the planned days after it. Of several missed
 * days only the last is there, because one count makes up for all.
 *
 * @param schedule       planned days
 * @param lastCountedOn  last day on which the whole tray was counted; null: never
 * @param today          calendar date
 * @returns at least one, in order; only the first can be late. After the final count it is that one, until it is closed
 * @throws RangeError as countDays
 * Checked in tests/domain/germination/bench/counts-ahead.test.ts
 */
export function countsAhead(schedule: CountSchedule, lastCountedOn: string | null, today: string): NextCount[] {
  const next = nextCount(schedule, lastCountedOn, today);
  const later = countDays(schedule).filter((day) => day > next.on);
  return [next, ...later.map((on) => ({ on, final: on === schedule.finalCountOn, daysLate: 0 }))];
}
