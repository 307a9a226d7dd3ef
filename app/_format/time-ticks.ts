import { fromEpochDay, toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { formatDate, formatMonth } from './figures';

export interface TimeTick {
  epochSeconds: number;
  label: string;
}

const SECONDS_PER_DAY = 86_400;
const MOST_TICKS = 6;

/**
 * Round times along an axis: years, months, days or hours, six at most.
 *
 * @param fromDay, toDay  midnights UTC at its ends, days since 1970-01-01, fromDay < toDay
 * @returns ascending, within the axis
 * Checked in tests/app/time-ticks.test.ts
 */
export function timeTicks(fromDay: number, toDay: number): TimeTick[] {
  const days = toDay - fromDay;
  const months = monthsWithin(fromDay, toDay);
  if (days <= 2) return hoursWithin(fromDay, toDay, days === 1 ? 6 : 12);
  if (months.length < 4) return daysWithin(fromDay, toDay);
  const every = [1, 3, 6, 12, 24, 60, 120].find(
    (step) => months.filter((month) => month.number % step === 0).length <= MOST_TICKS,
  );
  return months
    .filter(({ number }) => number % (every ?? 240) === 0)
    .map(({ day, date }) => ({
      epochSeconds: day * SECONDS_PER_DAY,
      label: (every ?? 240) >= 12 ? date.slice(0, 4) : formatMonth(date),
    }));
}

/** First days of months, numbered from the year 0. */
function monthsWithin(fromDay: number, toDay: number): { day: number; date: string; number: number }[] {
  const [year, month] = fromEpochDay(fromDay).split('-').map(Number) as [number, number];
  const months = [];
  for (let number = 12 * year + month - 1; ; number += 1) {
    const date = `${String(Math.floor(number / 12)).padStart(4, '0')}-${String((number % 12) + 1).padStart(2, '0')}-01`;
    const day = toEpochDay(date);
    if (day >= toDay) return months;
    if (day >= fromDay) months.push({ day, date, number });
  }
}

function daysWithin(fromDay: number, toDay: number): TimeTick[] {
  const every = [1, 2, 7, 14, 28].find((step) => (toDay - fromDay) / step <= MOST_TICKS) ?? 28;
  const ticks: TimeTick[] = [];
  for (let day = fromDay; day < toDay; day += every) {
    // The year stands in the words above the picture.
    ticks.push({ epochSeconds: day * SECONDS_PER_DAY, label: formatDate(fromEpochDay(day)).slice(0, -5) });
  }
  return ticks;
}

function hoursWithin(fromDay: number, toDay: number, every: number): TimeTick[] {
  const ticks: TimeTick[] = [];
  for (let hour = fromDay * 24; hour < toDay * 24; hour += every) {
    ticks.push({ epochSeconds: hour * 3600, label: `${String(hour % 24).padStart(2, '0')}:00` });
  }
  return ticks;
}
