/** Where nothing reaches a goal as asked: the nearest way that does, so that a dead end is not the last word. */
import { lowMoistureLimitPercent } from './low-moisture-limit';
import { moistestThatReaches, type StorageGoal, warmestThatReaches } from './reach-goal';
import type { SeedKind } from './seed-kind';
import type { StorageCondition } from './viability-equation';

/** Stores that many people have or can buy: cool room, cellar, fridge, freezer; degrees C. Common practice. */
export const USUAL_STORES_C = [20, 15, 10, 5, -18] as const;
const COLDEST_USUAL_STORE_C = Math.min(...USUAL_STORES_C);

/**
 * The warmest usual store, colder than the one asked about, in which some moisture reaches the goal.
 *
 * @param seed          constants with their range, storage behaviour and oil
 * @param temperatureC  degrees C of the store in which none does
 * @param goal          viability wanted after some days
 * @returns that store with the moistest seed that reaches it there; null when none does
 * @throws RangeError as `moistestThatReaches`
 * Checked in tests/domain/longevity/other-ways.test.ts
 */
export function coolerWay(seed: SeedKind, temperatureC: number, goal: StorageGoal): StorageCondition | null {
  for (const cooler of USUAL_STORES_C) {
    if (cooler >= temperatureC) continue;
    const reach = moistestThatReaches(seed, cooler, goal);
    if (reach.ok) return { temperatureC: cooler, moisturePercent: reach.moisturePercent };
  }
  return null;
}

/**
 * The moistest whole percent, drier than the moisture asked about, at which a usual store reaches the goal.
 *
 * @param seed             constants with their range, storage behaviour and oil
 * @param moisturePercent  percent of fresh weight at which none does
 * @param goal             viability wanted after some days
 * @returns that moisture with the warmest store that reaches it there, -18 C or warmer; null when none does
 * @throws RangeError as `warmestThatReaches`
 * Checked in tests/domain/longevity/other-ways.test.ts
 */
export function drierWay(seed: SeedKind, moisturePercent: number, goal: StorageGoal): StorageCondition | null {
  const driest = lowMoistureLimitPercent(seed);
  for (let drier = Math.ceil(moisturePercent) - 1; drier >= driest; drier -= 1) {
    const reach = warmestThatReaches(seed, drier, goal);
    if (reach.ok && reach.temperatureC >= COLDEST_USUAL_STORE_C) {
      return { moisturePercent: drier, temperatureC: reach.temperatureC };
    }
  }
  return null;
}
