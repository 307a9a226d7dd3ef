import 'server-only';
import { type CalendarDate, fromEpochDay, toEpochDay } from '@/lib/domain/calendar/calendar-date';
import {
  type TargetBand,
  type TargetExcursion,
  type TimeOutside,
  targetExcursions,
  timeOutside,
} from '@/lib/domain/longevity/outside-target';
import { SECONDS_PER_DAY } from '@/lib/domain/longevity/store-day';
import type { ClimateTolerance } from '@/lib/domain/stock/climate-tolerance';
import { type ClimatePart, cutTo, type DaysAsked, type PartWithClimate, secondsOf } from './climate-parts';

/** Time outside the target; humidity null where the store has no target for it. */
export interface Outside {
  temperature: TimeOutside;
  humidity: TimeOutside | null;
}

export interface MonthOutside extends Outside {
  /** its first day within the stretch */
  from: CalendarDate;
  /** its last */
  to: CalendarDate;
}

/** Time outside the target by calendar month. */
export function monthsOutside(
  parts: readonly PartWithClimate[],
  days: DaysAsked,
  tolerance: ClimateTolerance,
): MonthOutside[] {
  return monthsOf(days).map((month) => ({
    from: fromEpochDay(month.fromDay),
    to: fromEpochDay(month.toDay - 1),
    ...outsideOf(cutTo(parts, month), tolerance),
  }));
}

/** The months as one: hours add up. */
export function wholeOf(months: readonly Outside[]): Outside {
  const humid = months.flatMap(({ humidity }) => (humidity ? [humidity] : []));
  return {
    temperature: addUp(months.map(({ temperature }) => temperature)),
    humidity: humid.length === 0 ? null : addUp(humid),
  };
}

/** Stretches too warm or too cold, in order of time. */
export function excursionsOf(parts: readonly PartWithClimate[], tolerance: ClimateTolerance): TargetExcursion[] {
  return parts.flatMap((part) => targetExcursions(part.climate, temperatureBand(part, tolerance), ...secondsOf(part)));
}

/** The whole days that an excursion touches. */
export function daysTouched({ fromEpochSeconds, toEpochSeconds }: TargetExcursion): DaysAsked {
  const fromDay = Math.floor(fromEpochSeconds / SECONDS_PER_DAY);
  return { fromDay, toDay: Math.max(fromDay + 1, Math.ceil(toEpochSeconds / SECONDS_PER_DAY)) };
}

function monthsOf({ fromDay, toDay }: DaysAsked): DaysAsked[] {
  const months: DaysAsked[] = [];
  for (let day = fromDay; day < toDay; ) {
    const [year, month] = fromEpochDay(day).split('-').map(Number) as [number, number];
    const next = month === 12 ? `${year + 1}-01-01` : `${year}-${String(month + 1).padStart(2, '0')}-01`;
    const ends = Math.min(toDay, toEpochDay(next));
    months.push({ fromDay: day, toDay: ends });
    day = ends;
  }
  return months;
}

function outsideOf(parts: readonly PartWithClimate[], tolerance: ClimateTolerance): Outside {
  const humid = parts.flatMap((part) => {
    const band = humidityBand(part, tolerance);
    return band ? [timeOutside(part.climate, band, ...secondsOf(part))] : [];
  });
  const temperature = parts.map((part) =>
    timeOutside(part.climate, temperatureBand(part, tolerance), ...secondsOf(part)),
  );
  return { temperature: addUp(temperature), humidity: humid.length === 0 ? null : addUp(humid) };
}

function temperatureBand({ target }: ClimatePart, { temperatureC }: ClimateTolerance): TargetBand {
  return { of: 'temperatureC', lower: target.temperatureC - temperatureC, upper: target.temperatureC + temperatureC };
}

function humidityBand({ target }: ClimatePart, { relativeHumidity }: ClimateTolerance): TargetBand | null {
  const wanted = target.relativeHumidity;
  if (wanted === null) return null;
  return { of: 'relativeHumidity', lower: wanted - relativeHumidity, upper: wanted + relativeHumidity };
}

function addUp(all: readonly TimeOutside[]): TimeOutside {
  const known = (values: (number | null)[]) => values.filter((value) => value !== null);
  const lowest = known(all.map((one) => one.lowest));
  const highest = known(all.map((one) => one.highest));
  return {
    hoursLogged: all.reduce((sum, one) => sum + one.hoursLogged, 0),
    hoursAbove: all.reduce((sum, one) => sum + one.hoursAbove, 0),
    hoursBelow: all.reduce((sum, one) => sum + one.hoursBelow, 0),
    lowest: lowest.length === 0 ? null : Math.min(...lowest),
    highest: highest.length === 0 ? null : Math.max(...highest),
  };
}
