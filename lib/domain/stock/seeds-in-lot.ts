/**
 * How many seeds a cleaned lot holds, from whatever the hand did: counted, weighed, or both.
 *
 * A count is believed before a weight, a lot's own thousand-seed weight before what the crop's seed usually weighs.
 */
import { SEEDS_PER_THOUSAND, seedsFromWeight, thousandSeedWeightFromCount } from './seed-count';

/** Count and weights may differ this much before one of them must be a slip; a scoop of chaff explains less. */
export const LARGEST_DISAGREEMENT = 0.25;

export type SeedsInLot =
  | {
      ok: true;
      seeds: number;
      /** grams per 1000 seeds of this lot; null when only the crop's usual figure is known */
      thousandSeedWeightG: number | null;
      /** 'counted'; 'weighed': through the lot's thousand-seed weight; 'estimated': through the crop's usual seed */
      from: 'counted' | 'weighed' | 'estimated';
    }
  | { ok: false; reason: 'amount-needed' | 'seed-size-needed' | 'no-whole-seed' }
  | { ok: false; reason: 'figures-disagree'; seedsByWeight: number };

/**
 * Seeds in a cleaned lot.
 *
 * @param seedCount            seeds counted, integer >= 1, or null
 * @param cleanWeightG         grams of clean seed, > 0, or null
 * @param thousandSeedWeightG  grams per 1000 seeds of this lot, > 0, or null
 * @param usualSeedsPerGram    what the reference says of the crop, > 0, or null
 * @returns seeds, whole and at least 1, with the lot's thousand-seed weight (worked out when both count and weight are
 *          given); or 'amount-needed' (neither count nor weight), 'seed-size-needed' (a weight that nothing turns into
 *          seeds), 'no-whole-seed' (the weight is less than one seed), 'figures-disagree' (count, weight and
 *          thousand-seed weight are more than LARGEST_DISAGREEMENT apart)
 * @throws RangeError when an argument is outside its range
 * Checked in tests/domain/stock/seeds-in-lot.test.ts
 */
export function seedsInLot({
  seedCount,
  cleanWeightG,
  thousandSeedWeightG,
  usualSeedsPerGram,
}: {
  seedCount: number | null;
  cleanWeightG: number | null;
  thousandSeedWeightG: number | null;
  usualSeedsPerGram: number | null;
}): SeedsInLot {
  if (seedCount !== null) {
    if (cleanWeightG === null) return { ok: true, seeds: seedCount, thousandSeedWeightG, from: 'counted' };
    const counted = thousandSeedWeightFromCount({ seeds: seedCount, weightG: cleanWeightG });
    if (thousandSeedWeightG === null) {
      return { ok: true, seeds: seedCount, thousandSeedWeightG: counted, from: 'counted' };
    }
    const seedsByWeight = seedsFromWeight({ weightG: cleanWeightG, thousandSeedWeightG });
    // Relative to the larger of the two, so that swapping them gives the same verdict.
    if (Math.abs(seedsByWeight - seedCount) > LARGEST_DISAGREEMENT * Math.max(seedsByWeight, seedCount)) {
      return { ok: false, reason: 'figures-disagree', seedsByWeight };
    }
    return { ok: true, seeds: seedCount, thousandSeedWeightG, from: 'counted' };
  }
  if (cleanWeightG === null) return { ok: false, reason: 'amount-needed' };
  const own = thousandSeedWeightG !== null;
  const sizeG = thousandSeedWeightG ?? (usualSeedsPerGram === null ? null : SEEDS_PER_THOUSAND / usualSeedsPerGram);
  if (sizeG === null) return { ok: false, reason: 'seed-size-needed' };
  const seeds = seedsFromWeight({ weightG: cleanWeightG, thousandSeedWeightG: sizeG });
  if (seeds < 1) return { ok: false, reason: 'no-whole-seed' };
  return { ok: true, seeds, thousandSeedWeightG, from: own ? 'weighed' : 'estimated' };
}
