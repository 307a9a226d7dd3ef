import 'server-only';
import type Database from 'better-sqlite3';
import { SECONDS_PER_DAY } from '@/lib/domain/longevity/store-day';

/** What was read in a span of time: few enough spans to draw, with the extremes, so that an hour's failure shows in years. */
export interface SeriesSpan {
  fromEpochSeconds: number;
  /** not included */
  toEpochSeconds: number;
  readings: number;
  lowestTemperatureC: number;
  meanTemperatureC: number;
  highestTemperatureC: number;
  /** 0-1; null where no humidity was read */
  lowestHumidity: number | null;
  meanHumidity: number | null;
  highestHumidity: number | null;
}

/** Spans drawn at most, whatever the stretch: about as many as a screen has room for. */
export const MOST_SPANS = 800;
const MINUTE = 60;
const HOUR = 3600;
/** Lengths of a span, so that its ends are round times of day. */
const SPAN_SECONDS = [
  ...[1, 2, 5, 10, 15, 20, 30].map((minutes) => minutes * MINUTE),
  ...[1, 2, 3, 4, 6, 8, 12].map((hours) => hours * HOUR),
];
/** From here on the days' sums stand in for the readings: a hundred days of readings every ten minutes are 14,400 rows. */
const RAW_READINGS_FOR_DAYS = 100;

/**
 * How long a span is for a stretch of time.
 *
 * @param seconds  of the stretch, > 0
 * @returns seconds: round times of day, or whole days; at most 801 such spans touch the stretch
 * Checked in tests/server/queries/climate-series.test.ts
 */
export function spanSeconds(seconds: number): number {
  const least = seconds / MOST_SPANS;
  const ofDay = SPAN_SECONDS.find((span) => span >= least);
  if (ofDay !== undefined && seconds <= RAW_READINGS_FOR_DAYS * SECONDS_PER_DAY) return ofDay;
  return Math.max(1, Math.ceil(least / SECONDS_PER_DAY)) * SECONDS_PER_DAY;
}

/**
 * The readings of one store's own logger, put together by the database.
 *
 * @param fromEpochSeconds, toEpochSeconds  the stretch; midnights UTC where a span is a day or more
 * @param span  seconds, from `spanSeconds`
 * @returns spans that hold a reading, in order of time
 */
export function climateSeries(
  rows: Database.Database,
  storeId: string,
  fromEpochSeconds: number,
  toEpochSeconds: number,
  span: number,
): SeriesSpan[] {
  const found = span < SECONDS_PER_DAY ? fromReadings(rows) : fromDays(rows);
  const stretch = { storeId, from: fromEpochSeconds, to: toEpochSeconds, span };
  return found.all(stretch).map(({ spanNumber, ...row }) => ({
    fromEpochSeconds: spanNumber * span,
    toEpochSeconds: (spanNumber + 1) * span,
    ...row,
  }));
}

type Row = Omit<SeriesSpan, 'fromEpochSeconds' | 'toEpochSeconds'> & { spanNumber: number };

function fromReadings(rows: Database.Database) {
  return rows.prepare<object, Row>(
    `SELECT CAST(floor(CAST("atEpochSeconds" AS REAL) / @span) AS INTEGER) AS "spanNumber", COUNT(*) AS "readings",
       MIN("temperatureC") AS "lowestTemperatureC", AVG("temperatureC") AS "meanTemperatureC", MAX("temperatureC") AS "highestTemperatureC",
       MIN("relativeHumidity") AS "lowestHumidity", AVG("relativeHumidity") AS "meanHumidity", MAX("relativeHumidity") AS "highestHumidity"
     FROM "Reading"
     WHERE "storeId" = @storeId AND "atEpochSeconds" >= @from AND "atEpochSeconds" < @to AND NOT "takenBack"
     GROUP BY 1 ORDER BY 1`,
  );
}

/** A mean of means would weigh a day of two readings as much as one of 144. */
function fromDays(rows: Database.Database) {
  return rows.prepare<object, Row>(
    `SELECT CAST(floor("epochDay" * ${SECONDS_PER_DAY}.0 / @span) AS INTEGER) AS "spanNumber", SUM("readings") AS "readings",
       MIN("lowestTemperatureC") AS "lowestTemperatureC",
       SUM("meanTemperatureC" * "readings") / SUM("readings") AS "meanTemperatureC",
       MAX("highestTemperatureC") AS "highestTemperatureC",
       MIN("lowestHumidity") AS "lowestHumidity",
       SUM("meanHumidity" * "humidityReadings") / NULLIF(SUM("humidityReadings"), 0) AS "meanHumidity",
       MAX("highestHumidity") AS "highestHumidity"
     FROM "ReadingDay"
     WHERE "storeId" = @storeId AND "epochDay" >= @from / ${SECONDS_PER_DAY} AND "epochDay" < @to / ${SECONDS_PER_DAY}
     GROUP BY 1 ORDER BY 1`,
  );
}
