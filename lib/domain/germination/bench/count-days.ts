/*
 * On which days a tray is to be counted.
 */
import { addDays, type CalendarDate, daysBetween } from '../../calendar/calendar-date';

export interface CountSchedule {
  firstCountOn: CalendarDate;
  /** on or after the first */
  finalCountOn: CalendarDate;
  /** days between counts from the first on, integer >= 1; null: only the first and the final count */
  countEveryDays: number | null;
}

/**
 * Days of counting: the first, every so many days after it, and the final one.
 *
 * @returns days in order, each once; one day when first and final are the same
 * @throws RangeError when the final day is before the first, or the step is not a whole number >= 1
 * Checked in tests/domain/germination/bench/count-days.test.ts
 */
export function countDays({ firstCountOn, finalCountOn, countEveryDays }: CountSchedule): CalendarDate[] {
  const span = daysBetween(firstCountOn, finalCountOn);
  if (span < 0) throw new RangeError(`countDays: finalCountOn must not be before ${firstCountOn}, got ${finalCountOn}`);
  if (countEveryDays !== null && !(Number.isSafeInteger(countEveryDays) && countEveryDays >= 1)) {
    throw new RangeError(`countDays: countEveryDays must be a whole number of at least 1, got ${countEveryDays}`);
  }
  const days: CalendarDate[] = [];
  for (let day = 0; day < span; day += countEveryDays ?? span) days.push(addDays(firstCountOn, day));
  days.push(finalCountOn);
  return days;
}

export interface NextCount {
  on: CalendarDate;
  /** the last planned count: every seed is classed */
  final: boolean;
  /** days since it was due; 0 when it is due today or later */
  daysLate: number;
}

/**
 * The count a tray waits for: the earliest planned day after its last counted one, however late it is. A count made
 * between two planned days stands for the one before it. After the final count nothing is planned: it waits to be classed
 * and closed, so the final count stays what it waits for.
 *
 * @param schedule       planned days
 * @param lastCountedOn  last day on which the whole tray was counted; null: never
 * @param today          calendar date
 * @returns the count to make
 * @throws RangeError as countDays
 * Checked in tests/domain/germination/bench/count-days.test.ts
 */
export function nextCount(schedule: CountSchedule, lastCountedOn: CalendarDate | null, today: CalendarDate): NextCount {
  const days = countDays(schedule);
  const last = schedule.finalCountOn;
  const waiting = days.filter((day) => lastCountedOn === null || day > lastCountedOn);
  // Of several missed days one count makes up for all: the latest that is due.
  const due = waiting.filter((day) => day <= today);
  const on = due.at(-1) ?? waiting[0] ?? last;
  return { on, final: on === last, daysLate: Math.max(0, daysBetween(due[0] ?? on, today)) };
}
