import 'server-only';
import { type CalendarDate, toEpochDay, yearOf } from '@/lib/domain/calendar/calendar-date';
import { type BelowByYear, chanceBelowByYear, datesBelowThreshold } from '@/lib/domain/longevity/date-below-threshold';
import { FORECAST_LEVEL } from '@/lib/domain/longevity/forecast-curve';
import type { LotPosterior } from '@/lib/domain/longevity/lot-model';
import type { PacketAgeing } from '@/lib/domain/longevity/packet-ageing';

/** When a lot falls below its line if its store stays as it is. Years; 'passed' already, null beyond 200 years. */
export interface LotFallsBelow {
  threshold: number;
  earliest: number | 'passed' | null;
  median: number | 'passed' | null;
  latest: number | 'passed' | null;
  /** the coming years, as long as there is much left to happen */
  byYear: BelowByYear[];
}

const YEARS_LISTED = 12;
const AS_GOOD_AS_SURE = 0.99;

/** The distribution of the date below the line, as the lot's page says and lists it. */
export function lotFallsBelow({
  posterior,
  ageing,
  threshold,
  today,
}: {
  posterior: LotPosterior;
  ageing: Extract<PacketAgeing, { ok: true }>;
  threshold: number;
  today: CalendarDate;
}): LotFallsBelow {
  const outside = 0.5 * (1 - FORECAST_LEVEL);
  const dates = datesBelowThreshold({
    posterior,
    probitsLostNow: ageing.probitsAt(toEpochDay(today)),
    ratePerDay: ageing.ratePerDay,
    threshold,
    today,
    chances: [outside, 0.5, 1 - outside],
  }).map(({ date }) => (date === null || date === 'passed' ? date : yearOf(date)));
  const [earliest = null, median = null, latest = null] = dates;
  const { byYear } = chanceBelowByYear({
    posterior,
    probitsAt: ageing.probitsAt,
    threshold,
    today,
    years: YEARS_LISTED,
  });
  const sure = byYear.findIndex(({ chanceByEnd }) => chanceByEnd >= AS_GOOD_AS_SURE);
  return { threshold, earliest, median, latest, byYear: sure < 0 ? byYear : byYear.slice(0, sure + 1) };
}
