/** A packet's stays, cut where the climate of its store became another: the box was moved, or the store set anew. */
import { fromEpochDay, toEpochDay } from '../calendar/calendar-date';
import type { StoragePeriod } from './storage-history';

/** From this day (days since 1970-01-01, or -Infinity) the climate of this name held in a store. */
export interface NamedClimate {
  fromDay: number;
  climateId: string;
}

/**
 * @param periods     contiguous stays, from `storageHistory`
 * @param climatesOf  the climates of a store in order of day, the first from -Infinity
 * @returns the same days, each stay under one climate; a stay without days stays one
 * Checked in tests/domain/stock/split-stays.test.ts
 */
export function splitStays(
  periods: readonly StoragePeriod[],
  climatesOf: (storeId: string) => readonly NamedClimate[],
): StoragePeriod[] {
  return periods.flatMap((period) => {
    const climates = climatesOf(period.storeId);
    if (climates.length === 1) return [{ ...period, climateId: (climates[0] as NamedClimate).climateId }];
    const [fromDay, toDay] = [toEpochDay(period.from), toEpochDay(period.to)];
    const held = climates.filter((climate, index) => {
      const ends = climates[index + 1]?.fromDay ?? Infinity;
      return climate.fromDay < Math.max(toDay, fromDay + 1) && ends > fromDay;
    });
    return held.map(({ climateId }, index): StoragePeriod => {
      const begins = index === 0 ? fromDay : (held[index] as NamedClimate).fromDay;
      const ends = held[index + 1]?.fromDay ?? toDay;
      return {
        ...period,
        climateId,
        from: index === 0 ? period.from : fromEpochDay(begins),
        to: index === held.length - 1 ? period.to : fromEpochDay(ends),
        days: ends - begins,
      };
    });
  });
}
