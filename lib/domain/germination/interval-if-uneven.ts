import { type UnevenDishesInterval, unevenDishesInterval } from '../statistics/uneven-dishes-interval';
import { replicateHeterogeneity } from './heterogeneity';
import type { NormalCount } from './normal-count';

/** Dishes that chance makes so different less often than this are said to differ. Common practice. */
const SURPRISING = 0.05;

/**
 * The interval that allows for uneven dishes, where dishes differ by more than chance.
 *
 * @param dishes  seeds (integer, >= 1) and normal (integer, 0 to seeds) of each
 * @param level   probability in (0, 1), default 0.95
 * @returns null while chance explains the differences (or there is one dish); otherwise the interval
 * @throws RangeError when a count or the level is outside its range
 * @see docs/methods/germination-interval.md
 * Checked in tests/domain/germination/interval-if-uneven.test.ts
 */
export function intervalIfUneven(dishes: readonly NormalCount[], level = 0.95): UnevenDishesInterval | null {
  if ((replicateHeterogeneity(dishes)?.pValue ?? 1) >= SURPRISING) return null;
  return unevenDishesInterval({
    dishes: dishes.map(({ seeds, normal }) => ({ successes: normal, trials: seeds })),
    level,
  });
}
