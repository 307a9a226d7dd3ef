import 'server-only';
import { toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { climateCoverage } from '@/lib/domain/longevity/climate-coverage';
import { equivalentTemperatureC } from '@/lib/domain/longevity/equivalent-temperature';
import { connections } from '../database/connections';
import { storeClimates } from '../judging/store-climates';
import { today } from '../today';

export const DAYS_LOOKED_AT = 365;

/** How warm a store was for seed in the year to today. */
export interface StoreYear {
  /** the steady temperature at which sealed seed would have aged as much, degrees C */
  temperatureC: number;
  /** of the 365 days, those that were logged; the target stands in for the others */
  daysRead: number;
}

/**
 * The last year of a store that exists, for seed with these temperature coefficients.
 *
 * @returns null when not a day of it was logged
 */
export function getStoreYear(storeId: string, coefficients: { CH: number; CQ: number }): StoreYear | null {
  // Not `bulk`: an import that is under way shows its readings there, and may yet be taken back.
  const climate = storeClimates(connections().rows).climateOf(storeId);
  const toDay = toEpochDay(today());
  const fromDay = toDay - DAYS_LOOKED_AT;
  const daysRead = Math.round(climateCoverage(climate, fromDay, toDay).daysRead);
  if (daysRead === 0) return null;
  return { temperatureC: equivalentTemperatureC(climate, coefficients, fromDay, toDay), daysRead };
}
