/*
 * One dish as it stands: what was taken out, what still lies there, and what stands in the way of closing its test.
 */
import type { ClassCounts } from '../seed-classes';
import { SEED_CLASSES } from '../seed-classes';
import { type DayCount, dayCounts } from './day-counts';
import { NOTHING_FOUND, seedsFound, type TrayCount } from './tray-count';

export interface BenchDish {
  id: string;
  /** from 1 */
  position: number;
  /** seeds set, integer >= 1 */
  seeds: number;
}

export interface DishState<Count extends TrayCount = TrayCount> {
  dish: BenchDish;
  /** days that were counted or are disagreed about, in order of days; taken-back days are left out */
  days: DayCount<Count>[];
  /** taken out in all, by class */
  totals: ClassCounts;
  /** seeds that still lie there; negative when more was written down than was set */
  remaining: number;
  /** days about which counts disagree */
  disagreements: DayCount<Count>[];
}

/**
 * Every dish of a tray with what was counted in it.
 *
 * @param dishes  of one tray, in order of position
 * @param counts  of that tray, in any order; counts of other dishes are passed over
 * @returns a state for each dish, in the order of the dishes
 * Checked in tests/domain/germination/bench/dish-state.test.ts
 */
export function dishStates<Count extends TrayCount>(
  dishes: readonly BenchDish[],
  counts: readonly Count[],
): DishState<Count>[] {
  const byDish = new Map<string, DayCount<Count>[]>();
  for (const day of dayCounts(counts)) {
    if (day.found === null && !day.disagree) continue;
    const days = byDish.get(day.dishId);
    if (days) days.push(day);
    else byDish.set(day.dishId, [day]);
  }
  return dishes.map((dish) => {
    const days = byDish.get(dish.id) ?? [];
    const totals = { ...NOTHING_FOUND };
    for (const { found } of days) for (const seedClass of SEED_CLASSES) totals[seedClass] += found?.[seedClass] ?? 0;
    return {
      dish,
      days,
      totals,
      remaining: dish.seeds - seedsFound(totals),
      disagreements: days.filter((day) => day.disagree),
    };
  });
}

/**
 * The last day on which the whole tray had been looked at: every dish that still held seed.
 *
 * @param states  every dish of the tray
 * @returns calendar day; null while some dish with seed in it was never counted
 * Checked in tests/domain/germination/bench/dish-state.test.ts
 */
export function lastCountedOn(states: readonly DishState[]): string | null {
  const inUse = states.some(({ remaining }) => remaining > 0)
    ? states.filter(({ remaining }) => remaining > 0)
    : states;
  let earliest: string | null = null;
  for (const { days } of inUse) {
    const latest = days.at(-1)?.on;
    if (latest === undefined) return null;
    if (earliest === null || latest < earliest) earliest = latest;
  }
  return earliest;
}

/** Why a tray cannot be closed yet. */
export type Unready =
  | { reason: 'disagreement'; position: number; on: string }
  | { reason: 'too-many'; position: number; over: number }
  | { reason: 'not-classed'; position: number; remaining: number };

/**
 * What stands between a tray and its result: days that disagree, more seed counted than set, seed not yet classed.
 *
 * @returns empty when the tray can be closed
 * Checked in tests/domain/germination/bench/dish-state.test.ts
 */
export function unready(states: readonly DishState[]): Unready[] {
  return states.flatMap(({ dish: { position }, disagreements, remaining }): Unready[] => [
    ...disagreements.map(({ on }) => ({ reason: 'disagreement' as const, position, on })),
    ...(remaining < 0 ? [{ reason: 'too-many' as const, position, over: -remaining }] : []),
    ...(remaining > 0 ? [{ reason: 'not-classed' as const, position, remaining }] : []),
  ]);
}
