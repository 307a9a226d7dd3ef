/**
 * The ageing of one packet over its whole storage history, and on under its present store.
 *
 * Sealed stays age at the moisture they were packed with; open stays follow the store's humidity. Ageing before the
 * first placement (drying and cleaning, days to weeks) is not reckoned: the first test already feels it. A moisture
 * that was never measured is taken as that of seed at rest in room air (50 % relative humidity, 20 C), which is moist
 * for a sealed packet and so errs towards earlier tests; the caller widens the prior for it.
 */
import { toEpochDay } from '../calendar/calendar-date';
import type { MoistureSource } from '../moisture/moisture-source';
import type { StoragePeriod } from '../stock/storage-history';
import { withLowMoistureLimit } from './low-moisture-limit';
import type { SeedKind } from './seed-kind';
import { type StayAgeing, stayAgeing } from './stay-ageing';
import type { StoreClimate } from './store-climate';

export type PacketAgeing =
  | {
      ok: true;
      /** probits lost from the first placement to midnight of a day (days since 1970-01-01); runs on past the history */
      probitsAt(day: number): number;
      /** probits a day under the present store */
      ratePerDay: number;
      /** probits a day if the present store were at its target throughout */
      targetRatePerDay: number;
      /** percent of fresh weight now */
      moisturePercent: number;
      moistureAssumed: boolean;
      /** of the present stay */
      moistureFrom: MoistureSource;
      outsideFittedRange: boolean;
      notes: string[];
    }
  | { ok: false; reason: string };

const DAYS_OF_A_YEAR = 365;

/**
 * @param periods    the packet's stays, contiguous, from `storageHistory`; at least one
 * @param climateOf  a climate by its id
 * @param seed       constants with their range, storage behaviour and oil
 * @returns ageing at any day with what had to be assumed, or `{ ok: false, reason }` where the equation does not hold
 * @throws RangeError when there is no period
 * Checked in tests/domain/longevity/packet-ageing.test.ts
 */
export function packetAgeing(
  periods: readonly StoragePeriod[],
  climateOf: (climateId: string) => StoreClimate,
  seed: SeedKind,
): PacketAgeing {
  const last = periods.at(-1);
  const first = periods[0];
  if (!first || !last) throw new RangeError('packetAgeing: periods must not be empty');
  const withLimit = withLowMoistureLimit(seed);
  const stays: StayAgeing[] = [];
  for (const period of periods) {
    const stay = stayAgeing(period, climateOf(period.climateId), withLimit);
    if (!stay.ok) return stay;
    stays.push(stay);
  }
  const lastStay = stays.at(-1) as StayAgeing;
  const endDay = toEpochDay(last.to);
  const ratePerDay = lastStay.between(endDay - DAYS_OF_A_YEAR, endDay) / DAYS_OF_A_YEAR;
  const starts: number[] = [];
  const fromDays: number[] = [];
  let total = 0;
  periods.forEach((period, index) => {
    starts.push(total);
    const fromDay = toEpochDay(period.from);
    fromDays.push(fromDay);
    total += (stays[index] as StayAgeing).between(fromDay, toEpochDay(period.to));
  });
  return {
    ok: true,
    probitsAt: (day) => {
      if (day >= endDay) return total + (day - endDay) * ratePerDay;
      let index = periods.length - 1;
      while (index > 0 && (fromDays[index] as number) > day) index -= 1;
      const from = fromDays[index] as number;
      if (day <= from) return starts[index] as number;
      return (starts[index] as number) + (stays[index] as StayAgeing).between(from, day);
    },
    ratePerDay,
    targetRatePerDay: lastStay.targetRatePerDay,
    moisturePercent: lastStay.moisturePercent,
    moistureFrom: lastStay.moistureFrom,
    moistureAssumed: stays.some((stay) => stay.moistureAssumed),
    outsideFittedRange: stays.some((stay) => stay.outsideFittedRange),
    notes: [...new Set(stays.flatMap((stay) => stay.notes))],
  };
}
