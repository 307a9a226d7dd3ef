/**
 * The points of a forecast's picture, in data units: the chart draws them, the table beside it lists them, and both show
 * the same numbers.
 */
import { type CalendarDate, fromEpochDay, toEpochDay, yearOf } from '../calendar/calendar-date';
import { type LotPosterior, viabilityAt } from './lot-model';

export interface ForecastPoint {
  date: CalendarDate;
  /** days since 1970-01-01 */
  day: number;
  /** proportions 0-1 */
  median: number;
  lower: number;
  upper: number;
}

/** Share of the band: 'nine times in ten'. */
export const FORECAST_LEVEL = 0.9;

/**
 * The curve with its band between two days, closer together where the ageing bends.
 *
 * @param posterior   from `fitLot`
 * @param probitsAt   ageing up to a day, probits
 * @param fromDay     first day, days since 1970-01-01
 * @param toDay       last day, > fromDay
 * @param steps       even steps between them, >= 1
 * @param extraDays   days that must be points too: moves between stores, today
 * @returns points in order of day
 * @throws RangeError when the days or steps are outside their range
 * Checked in tests/domain/longevity/forecast-curve.test.ts
 */
export function forecastCurve({
  posterior,
  probitsAt,
  fromDay,
  toDay,
  steps = 60,
  extraDays = [],
}: {
  posterior: LotPosterior;
  probitsAt: (day: number) => number;
  fromDay: number;
  toDay: number;
  steps?: number;
  extraDays?: readonly number[];
}): ForecastPoint[] {
  if (!(toDay > fromDay))
    throw new RangeError(`forecastCurve: toDay must be after fromDay, got ${fromDay} to ${toDay}`);
  if (!(Number.isInteger(steps) && steps >= 1)) throw new RangeError(`forecastCurve: steps must be >= 1, got ${steps}`);
  const days = new Set<number>();
  for (let step = 0; step <= steps; step += 1) days.add(Math.round(fromDay + ((toDay - fromDay) * step) / steps));
  for (const day of extraDays) if (day >= fromDay && day <= toDay) days.add(day);
  return [...days]
    .sort((a, b) => a - b)
    .map((day) => ({
      date: fromEpochDay(day),
      day,
      ...viabilityAt(posterior, { probitsLost: probitsAt(day), level: FORECAST_LEVEL }),
    }));
}

/**
 * One row a year for the table of the same figures: the first of January of each year within the curve, and both ends.
 *
 * @param fromDay, toDay  days since 1970-01-01, toDay > fromDay
 * @param most            most rows wanted, >= 3; years are skipped evenly beyond that
 * Checked in tests/domain/longevity/forecast-curve.test.ts
 */
export function yearlyDays(fromDay: number, toDay: number, most = 24): number[] {
  const firstYear = yearOf(fromEpochDay(fromDay)) + 1;
  const lastYear = yearOf(fromEpochDay(toDay));
  const every = Math.max(1, Math.ceil((lastYear - firstYear + 1) / (most - 2)));
  const days = [fromDay];
  for (let year = firstYear; year <= lastYear; year += every) {
    const day = toEpochDay(`${year}-01-01`);
    if (day > fromDay && day < toDay) days.push(day);
  }
  days.push(toDay);
  return days;
}
