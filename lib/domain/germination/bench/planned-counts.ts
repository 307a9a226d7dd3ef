/*
 * How a tray stands against its plan: which of the planned counts were made, which are late, which come.
 */
import { type CalendarDate, daysBetween } from '../../calendar/calendar-date';
import { type CountSchedule, countDays } from './count-days';

export interface PlannedCount {
  on: CalendarDate;
  /** the last planned count: every seed is classed */
  final: boolean;
  /** 'made': some dish was counted on that day or before the next planned one; 'passed-over': a later one made up for it */
  state: 'made' | 'passed-over' | 'late' | 'today' | 'coming';
  /** days on which it was made */
  madeOn: CalendarDate[];
  /** days since it was due; 0 unless late */
  daysLate: number;
}

/**
 * Every planned count of a tray and what became of it. A count made between two planned days stands for the one before
 * it; one made before the first planned day stands for the first.
 *
 * @param schedule   planned days
 * @param countedOn  days on which at least one dish was counted, in any order
 * @param today      calendar date
 * @returns an entry for each planned day, in order
 * @throws RangeError as countDays
 * Checked in tests/domain/germination/bench/planned-counts.test.ts
 */
export function plannedCounts(
  schedule: CountSchedule,
  countedOn: readonly CalendarDate[],
  today: CalendarDate,
): PlannedCount[] {
  const days = countDays(schedule);
  const counted = [...new Set(countedOn)].sort();
  return days.map((on, index) => {
    const next = days[index + 1];
    const madeOn = counted.filter((day) => (index === 0 || day >= on) && (next === undefined || day < next));
    const final = next === undefined;
    if (madeOn.length > 0) return { on, final, state: 'made', madeOn, daysLate: 0 };
    if (counted.some((day) => day > on)) return { on, final, state: 'passed-over', madeOn, daysLate: 0 };
    const daysLate = daysBetween(on, today);
    const state = daysLate > 0 ? 'late' : daysLate === 0 ? 'today' : 'coming';
    return { on, final, state, madeOn, daysLate: Math.max(0, daysLate) };
  });
}
