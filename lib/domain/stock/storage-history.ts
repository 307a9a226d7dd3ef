/**
 * Storage history: from the days on which a packet was put somewhere, the unbroken periods it spent there. Ageing is
 * summed over these periods.
 */
import { type CalendarDate, toEpochDay } from '../calendar/calendar-date';
import type { MeasuredMoisture } from '../moisture/moisture-source';
import { isHermetic } from './containers';

/** A packet is put into a store, in a container, at a moisture (percent of fresh weight; null: not measured). */
export interface Placement {
  storeId: string;
  from: CalendarDate;
  container: string;
  moisturePercent: number | null;
  /** where nobody wrote the moisture and tests of the packet tell it (lib/domain/moisture/stay-moisture.ts) */
  measured?: MeasuredMoisture;
}

/** A stay: from the day it began (included) to the day it ended (not included). */
export interface StoragePeriod {
  storeId: string;
  /** whose climate held: the store's name for it, until splitStays names one for a stretch of days */
  climateId: string;
  from: CalendarDate;
  to: CalendarDate;
  days: number;
  hermetic: boolean;
  moisturePercent: number | null;
  /** as its placement's */
  measured?: MeasuredMoisture;
}

/**
 * The stays of one packet, contiguous and in order.
 *
 * @param placements  in the order they happened; two may share a day, and the first of them then has zero days
 * @param endsOn      the day up to which the history runs: today, or the day the packet was emptied
 * @returns one period per placement, the last ending on `endsOn`; empty when there are no placements
 * @throws RangeError when placements are out of order or begin after endsOn, a date does not exist, a container is
 *         unknown, or a moisture is outside (0, 100)
 * Checked in tests/domain/stock/storage-history.test.ts
 */
export function storageHistory(placements: readonly Placement[], endsOn: CalendarDate): StoragePeriod[] {
  const endDay = toEpochDay(endsOn);
  return placements.map((placement, index) => {
    const { storeId, from, container, moisturePercent, measured } = placement;
    if (moisturePercent !== null && !(moisturePercent > 0 && moisturePercent < 100)) {
      throw new RangeError(`storageHistory: moisturePercent must be in (0, 100) or null, got ${moisturePercent}`);
    }
    const next = placements[index + 1];
    const to = next === undefined ? endsOn : next.from;
    const days = (next === undefined ? endDay : toEpochDay(next.from)) - toEpochDay(from);
    if (days < 0) {
      throw new RangeError(
        next === undefined
          ? `storageHistory: placement from ${from} begins after the history ends (${endsOn})`
          : `storageHistory: placements must be in order of date, got ${from} before ${next.from}`,
      );
    }
    const period = { storeId, climateId: storeId, from, to, days, hermetic: isHermetic(container), moisturePercent };
    return measured ? { ...period, measured } : period;
  });
}
