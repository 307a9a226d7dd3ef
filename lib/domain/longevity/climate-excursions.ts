/**
 * Stretches in which a store aged its seed much faster than it is meant to: a fridge that failed, a door left open. They
 * bend the forecast, so they are named on it.
 */
import { temperatureIntegral } from './hermetic-ageing';
import type { StoreClimate } from './store-climate';

export interface ClimateExcursion {
  /** days since 1970-01-01: first day out, and the day after the last */
  fromDay: number;
  toDay: number;
  /** how many times faster than under the target seed aged meanwhile */
  timesFaster: number;
  /** ageing during it, in days under the target: 'as much as eight normal months' */
  targetDays: number;
}

/** A summer in an unheated room doubles ageing; four times is trouble. Our own choice. */
const OUT_OF_HAND = 4;
/** Shorter ones cost little and are usually a door. */
const LEAST_DAYS = 3;
/** Days back to normal that still belong to the same trouble. */
const PAUSE_DAYS = 3;

/**
 * @param climate    from `storeClimate`
 * @param constants  CH and CQ of the seed: how much warmth hurts it
 * @param fromDay    days since 1970-01-01
 * @param toDay      days since 1970-01-01, >= fromDay
 * @returns excursions in order of day; empty where nothing was logged
 * Checked in tests/domain/longevity/climate-excursions.test.ts
 */
export function climateExcursions(
  climate: StoreClimate,
  constants: { CH: number; CQ: number },
  fromDay: number,
  toDay: number,
): ClimateExcursion[] {
  const { firstDay, endDay, cumulative, targetRatePerDay } = temperatureIntegral(climate, constants);
  const found: ClimateExcursion[] = [];
  let current: { fromDay: number; toDay: number; gathered: number } | null = null;
  const close = () => {
    if (!current) return;
    const days = current.toDay - current.fromDay;
    if (days >= LEAST_DAYS) {
      const targetDays = current.gathered / targetRatePerDay;
      found.push({ fromDay: current.fromDay, toDay: current.toDay, timesFaster: targetDays / days, targetDays });
    }
    current = null;
  };
  for (let day = Math.max(fromDay, firstDay); day < Math.min(toDay, endDay); day += 1) {
    const gathered = (cumulative[day - firstDay + 1] as number) - (cumulative[day - firstDay] as number);
    if (gathered >= OUT_OF_HAND * targetRatePerDay) {
      if (current) {
        current.gathered += gathered;
        current.toDay = day + 1;
      } else current = { fromDay: day, toDay: day + 1, gathered };
    } else if (current && day + 1 - current.toDay > PAUSE_DAYS) close();
  }
  close();
  return found;
}
