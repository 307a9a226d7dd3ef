/**
 * What a store's climate cost its seed: ageing through a stretch of days, less what the store at its target would have
 * aged it. Normal is the target, not the store's usual: it is what the steward set, it does not move when a bad year is
 * added to the record, and a store that is always too warm is not excused by being used to it.
 *
 * A cost may be negative: a store colder than its target spares its seed. Costs add over stretches.
 */
import { toEpochDay } from '../calendar/calendar-date';
import type { StoragePeriod } from '../stock/storage-history';
import { climateCoverage } from './climate-coverage';
import { withLowMoistureLimit } from './low-moisture-limit';
import type { SeedKind } from './seed-kind';
import { stayAgeing } from './stay-ageing';
import type { StoreClimate } from './store-climate';
import { requireDayRange } from './store-day';

export interface ClimateCost {
  ok: true;
  /** days of the stretch that the packet lay there */
  days: number;
  /** of these, days that were logged; for the others the target stands in, at no cost */
  daysRead: number;
  /** probits lost */
  probits: number;
  /** probits that the store at its target would have cost */
  normalProbits: number;
  /** the difference: what the climate cost. Negative where it spared the seed */
  extraProbits: number;
  /** the cost as time: so many days at the target age the seed as much */
  normalDays: number;
}

/**
 * The cost of a stretch of days to a packet.
 *
 * @param periods    its stays in the stores that are asked about, each under one climate (`splitStays`); others left out
 * @param climateOf  a climate by its id
 * @param seed       constants with their range, storage behaviour and oil
 * @param fromDay    days since 1970-01-01, whole
 * @param toDay      days since 1970-01-01, whole, >= fromDay; not included
 * @returns the cost, nought for days outside the stays; or `{ ok: false, reason }` where the equation does not hold
 * @throws RangeError when a day is not whole or the stretch runs backwards
 * Checked against R's `integrate`: tests/golden/climate-cost.json, and by its laws, in tests/domain/longevity/climate-cost.test.ts
 */
export function climateCost(
  periods: readonly StoragePeriod[],
  climateOf: (climateId: string) => StoreClimate,
  seed: SeedKind,
  fromDay: number,
  toDay: number,
): ClimateCost | { ok: false; reason: string } {
  requireDayRange('climateCost', fromDay, toDay);
  const withLimit = withLowMoistureLimit(seed);
  const sum = { days: 0, daysRead: 0, probits: 0, normalProbits: 0, normalDays: 0 };
  for (const period of periods) {
    const begins = Math.max(fromDay, toEpochDay(period.from));
    const ends = Math.min(toDay, toEpochDay(period.to));
    if (ends <= begins) continue;
    const climate = climateOf(period.climateId);
    const stay = stayAgeing(period, climate, withLimit);
    if (!stay.ok) return stay;
    const days = ends - begins;
    const probits = stay.between(begins, ends);
    sum.days += days;
    sum.daysRead += climateCoverage(climate, begins, ends).daysRead;
    sum.probits += probits;
    sum.normalProbits += days * stay.targetRatePerDay;
    sum.normalDays += probits / stay.targetRatePerDay - days;
  }
  return { ok: true, ...sum, extraProbits: sum.probits - sum.normalProbits };
}
