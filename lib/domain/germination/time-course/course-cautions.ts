/*
 * What the counts themselves say against taking the figures of a time course at their word.
 */
import { type Heterogeneity, replicateHeterogeneity } from '../heterogeneity';
import type { DishCounts } from './dish-counts';
import type { GerminationCurve } from './germination-curve';

export interface CourseCautions {
  /** more than a twentieth of the germinated seed was found at the last inspection: the end came too early */
  isStillRising: boolean;
  /** all seed germinated between the same two inspections: nothing is known of speed beyond that */
  isOneStretch: boolean;
  /** how the dishes that were watched to the end differ in final germination; null for fewer than two such dishes */
  betweenDishes: Heterogeneity | null;
  /** they differ by more than chance explains in 1 of 20 tests: every interval is too narrow */
  doDishesDiffer: boolean;
}

/** Our own choice: one seed of twenty or fewer trickles in at the end of most finished tests. */
const SHARE_STILL_RISING = 0.05;
const CHANCE_OF_UNEVEN = 0.05;

/**
 * Looks for what makes the figures misleading: a test ended early, inspections too far apart, dishes that differ.
 *
 * @param dishes  see DishCounts
 * @param curve   of the same dishes, from germinationCurve
 * @returns see CourseCautions
 * Checked in tests/domain/germination/time-course/course-cautions.test.ts
 */
export function courseCautions(dishes: readonly DishCounts[], curve: GerminationCurve): CourseCautions {
  const last = curve.rises.at(-1);
  const watched = dishes.filter(({ inspections }) =>
    inspections.some(({ fromDay, toDay }) => (Number.isFinite(toDay) ? toDay : fromDay) === curve.final.day),
  );
  const betweenDishes = replicateHeterogeneity(
    watched.map(({ seeds, inspections }) => ({
      seeds,
      normal: inspections.reduce((sum, { toDay, germinated }) => (Number.isFinite(toDay) ? sum + germinated : sum), 0),
    })),
  );
  return {
    isStillRising: last?.toDay === curve.final.day && last.share > SHARE_STILL_RISING * curve.final.germinated,
    isOneStretch: curve.rises.length === 1,
    betweenDishes,
    doDishesDiffer: betweenDishes !== null && betweenDishes.pValue < CHANCE_OF_UNEVEN,
  };
}
