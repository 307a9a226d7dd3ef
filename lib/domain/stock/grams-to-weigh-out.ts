import { weightFromSeeds } from './seed-count';

/** Figures that a bench balance shows of a small bag; more would be false exactness. */
const FIGURES = 3;

/**
 * Grams to weigh out for a number of seeds, as they stand on the pack list and then in the ledger.
 *
 * @param seeds                count, integer >= 1
 * @param thousandSeedWeightG  grams per 1000 seeds, > 0; null when not known
 * @returns grams to three figures; null without a thousand-seed weight: count them
 * @throws RangeError as weightFromSeeds
 * Checked in tests/domain/stock/grams-to-weigh-out.test.ts
 */
export function gramsToWeighOut(seeds: number, thousandSeedWeightG: number | null): number | null {
  if (thousandSeedWeightG === null) return null;
  return Number(weightFromSeeds({ seeds, thousandSeedWeightG }).toPrecision(FIGURES));
}
