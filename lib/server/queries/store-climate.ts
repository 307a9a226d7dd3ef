import 'server-only';
import type Database from 'better-sqlite3';
import { addDays, type CalendarDate, fromEpochDay, toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { climateCoverage } from '@/lib/domain/longevity/climate-coverage';
import type { TargetExcursion } from '@/lib/domain/longevity/outside-target';
import { SECONDS_PER_DAY } from '@/lib/domain/longevity/store-day';
import { type TimeStretch, unloggedStretches } from '@/lib/domain/longevity/unlogged-stretches';
import { type ClimateTolerance, usualTolerance } from '@/lib/domain/stock/climate-tolerance';
import type { ClimateQuery } from '@/lib/schemas/climate-query';
import { connections } from '../database/connections';
import { type StoreClimates, storeClimates } from '../judging/store-climates';
import { today } from '../today';
import { type ClimatePart, climateParts, type DaysAsked, type PartWithClimate, secondsOf } from './climate-parts';
import { climateSeries, type SeriesSpan, spanSeconds } from './climate-series';
import { daysTouched, excursionsOf, type MonthOutside, monthsOutside, type Outside, wholeOf } from './months-outside';

export interface StoreExcursion extends TargetExcursion, DaysAsked {}

export interface StoreClimatePage extends DaysAsked {
  from: CalendarDate;
  /** the last day */
  to: CalendarDate;
  today: CalendarDate;
  /** the first and last day that the logger that counts today has written; null: none */
  logged: { from: CalendarDate; to: CalendarDate } | null;
  days: number;
  /** of them, those that were logged */
  daysRead: number;
  tolerance: ClimateTolerance;
  usual: ClimateTolerance;
  parts: ClimatePart[];
  spanSeconds: number;
  spans: SeriesSpan[];
  unlogged: TimeStretch[];
  months: MonthOutside[];
  whole: Outside;
  /** the longest first */
  excursions: StoreExcursion[];
  excursionsInAll: number;
}

const EXCURSIONS_LISTED = 10;
const USUAL_DAYS = 365;
/** Half a century of readings is more than any logger has; a stretch from 1900 on would only be empty. */
const MOST_DAYS = 50 * 366;

/**
 * A store's climate over a stretch of days: what was logged, and how long it was outside its target.
 *
 * @param storeId  of a store that exists
 * @param asked    the stretch and the tolerance; without them the twelve months to today and what is usual for its kind
 */
export function getStoreClimate(storeId: string, asked: ClimateQuery): StoreClimatePage {
  const { rows } = connections();
  const climates = storeClimates(rows);
  const stretch = stretchOf(asked, today());
  const parts = climateParts(climates, storeId, stretch);
  const usual = usualTolerance(kindsAround(rows, storeId));
  const tolerance = {
    temperatureC: asked.tolerance ?? usual.temperatureC,
    relativeHumidity: asked.humidity === undefined ? usual.relativeHumidity : asked.humidity / 100,
  };
  const days = stretch.toDay - stretch.fromDay;
  const span = spanSeconds(days * SECONDS_PER_DAY);
  const months = monthsOutside(parts, stretch, tolerance);
  const excursions = excursionsOf(parts, tolerance).map((one) => ({ ...one, ...daysTouched(one) }));
  const length = (one: StoreExcursion) => one.toEpochSeconds - one.fromEpochSeconds;
  return {
    ...stretch,
    today: today(),
    logged: loggedDays(climates, storeId),
    days,
    daysRead: parts.reduce((sum, part) => sum + climateCoverage(part.climate, part.fromDay, part.toDay).daysRead, 0),
    tolerance,
    usual,
    parts: parts.map(({ climate: _, ...part }) => part),
    spanSeconds: span,
    spans: parts.flatMap((part) => spansOf(rows, part, span)),
    unlogged: parts.flatMap((part) => unloggedStretches(part.climate, ...secondsOf(part))),
    months,
    whole: wholeOf(months),
    excursions: excursions.toSorted((a, b) => length(b) - length(a)).slice(0, EXCURSIONS_LISTED),
    excursionsInAll: excursions.length,
  };
}

function stretchOf({ from, to }: ClimateQuery, todayIs: CalendarDate) {
  // Nothing was logged tomorrow.
  const last = to === undefined || to > todayIs ? todayIs : to;
  const first = from === undefined || from > last ? addDays(last, 1 - USUAL_DAYS) : from;
  const toDay = toEpochDay(last) + 1;
  const fromDay = Math.max(toEpochDay(first), toDay - MOST_DAYS);
  return { from: fromEpochDay(fromDay), to: last, fromDay, toDay };
}

/** Of the store itself and of those around it, from within. */
function kindsAround(rows: Database.Database, storeId: string): string[] {
  return rows
    .prepare<[string], string>(
      `WITH RECURSIVE around(kind, parentId, depth) AS (
         SELECT "kind", "parentId", 0 FROM "Store" WHERE "id" = ?
         UNION ALL SELECT s."kind", s."parentId", depth + 1 FROM "Store" s JOIN around ON s."id" = around.parentId
         WHERE depth < 20
       ) SELECT kind FROM around ORDER BY depth`,
    )
    .pluck()
    .all(storeId);
}

function loggedDays(climates: StoreClimates, storeId: string): StoreClimatePage['logged'] {
  const { firstDay, endDay } = climates.climateOf(storeId);
  return endDay === firstDay ? null : { from: fromEpochDay(firstDay), to: fromEpochDay(endDay - 1) };
}

function spansOf(rows: Database.Database, part: PartWithClimate, span: number): SeriesSpan[] {
  if (part.loggedIn === null) return [];
  const [from, to] = secondsOf(part);
  return climateSeries(rows, part.loggedIn.id, from, to, span).map((one) => ({
    ...one,
    fromEpochSeconds: Math.max(from, one.fromEpochSeconds),
    toEpochSeconds: Math.min(to, one.toEpochSeconds),
  }));
}
