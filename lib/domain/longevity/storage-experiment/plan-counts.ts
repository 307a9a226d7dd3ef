/**
 * When to count in a storage experiment: times spread from the start to the day on which little is left alive, by
 * constants that are thought to be near. Counts while seed is dying say most of its rate.
 */
import { normalCdf, normalQuantile } from '../../statistics/normal-distribution';
import { type LongevityConstants, type StorageCondition, sigmaDays } from '../viability-equation';

/** Probit at the last count, where the wait is long enough: 16 % alive (own choice). */
const LAST_PROBIT = -1;
/** Less than this lost at the last count says little of the rate (own choice). */
const LEAST_LOSS_PROBITS = 0.5;

export interface CountPlan {
  /** whole days since the seed was put away, rising; the count before storage is day 0. Fewer than asked where they coincide */
  counts: { days: number; expectedGermination: number }[];
  /** days to lose one probit, as the constants have it */
  sigmaDays: number;
  /** the longest wait cuts the plan short */
  isCutShort: boolean;
  /** too little will have died at the last count to show the rate */
  losesTooLittle: boolean;
}

/**
 * Plans the counts at one condition.
 *
 * @param constants           constants thought to be near
 * @param condition           moisture, percent of fresh weight, and temperature, degrees C
 * @param initialGermination  share that germinates before storage, above 0 and below 1
 * @param counts              counts after the one before storage, integer >= 1
 * @param longestDays         the longest that anybody will wait, days, >= 1
 * @returns the days and what to expect on each
 * @throws RangeError when an argument is outside its range
 * Checked by hand and by laws: tests/domain/longevity/storage-experiment/plan-counts.test.ts
 */
export function planCounts({
  constants,
  condition,
  initialGermination,
  counts,
  longestDays,
}: {
  constants: LongevityConstants;
  condition: StorageCondition;
  initialGermination: number;
  counts: number;
  longestDays: number;
}): CountPlan {
  if (!(initialGermination > 0 && initialGermination < 1)) {
    throw new RangeError(`planCounts: initialGermination must be above 0 and below 1, got ${initialGermination}`);
  }
  if (!Number.isInteger(counts) || counts < 1)
    throw new RangeError(`planCounts: counts must be at least 1, got ${counts}`);
  if (!(longestDays >= 1)) throw new RangeError(`planCounts: longestDays must be at least 1, got ${longestDays}`);
  const sigma = sigmaDays(constants, condition);
  const K = normalQuantile(initialGermination);
  // Seed that begins low is followed through one probit at least.
  const wanted = Math.max(1, K - LAST_PROBIT) * sigma;
  const end = Math.min(wanted, longestDays);
  const days = Array.from({ length: counts }, (_, i) => Math.max(1, Math.round((end * (i + 1)) / counts)));
  const all = [0, ...new Set(days)];
  return {
    counts: all.map((day) => ({ days: day, expectedGermination: normalCdf(K - day / sigma) })),
    sigmaDays: sigma,
    isCutShort: wanted > longestDays,
    losesTooLittle: (all.at(-1) as number) / sigma < LEAST_LOSS_PROBITS,
  };
}
