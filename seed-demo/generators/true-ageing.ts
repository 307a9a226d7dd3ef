/**
 * How alive a lot of the demo truly is on a day: the viability equation over where it lay, with the lot's own initial
 * viability and its own rate. The product never sees these two; it has to find them from the tests.
 */
import { type CalendarDate, daysBetween, toEpochDay } from '../../lib/domain/calendar/calendar-date';
import { packetAgeing } from '../../lib/domain/longevity/packet-ageing';
import type { SeedKind } from '../../lib/domain/longevity/seed-kind';
import { splitStays } from '../../lib/domain/stock/split-stays';
import { type Placement, storageHistory } from '../../lib/domain/stock/storage-history';
import type { StoreClimates } from '../../lib/server/judging/store-climates';

export interface TrueLot {
  key: string;
  placements: readonly Placement[];
  initialProbit: number;
  /** against the published rate */
  rate: number;
  /** years to lose one probit where the equation gives no answer */
  yearsPerProbit?: number;
}

const DAYS_PER_YEAR = 365.25;

/**
 * @param lot        with its placements in order
 * @param seed       the crop's constants
 * @param climates   of the stores, through time
 * @param today      calendar date
 * @returns viability on a day, probits
 * @throws Error when the equation gives no answer for the lot and the scenario does not say how it ages
 * Checked through tests/seed-demo/load-demo.test.ts
 */
export function trueViability(
  lot: TrueLot,
  seed: SeedKind,
  climates: StoreClimates,
  today: CalendarDate,
): (day: CalendarDate) => number {
  const stays = splitStays(storageHistory(lot.placements, today), climates.climatesThrough);
  const ageing = packetAgeing(stays, climates.climateOf, seed);
  if (ageing.ok) return (day) => lot.initialProbit - lot.rate * ageing.probitsAt(toEpochDay(day));
  const { yearsPerProbit } = lot;
  const begins = lot.placements[0]?.from;
  if (yearsPerProbit === undefined || begins === undefined) {
    throw new Error(`${lot.key}: say yearsPerProbit, for the equation gives no answer: ${ageing.reason}`);
  }
  return (day) => lot.initialProbit - daysBetween(begins, day) / DAYS_PER_YEAR / yearsPerProbit;
}
