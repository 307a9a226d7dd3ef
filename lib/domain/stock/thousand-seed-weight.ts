/**
 * Thousand-seed weight from counted replicates, and whether they agree well enough: as a rule eight of 100 seeds.
 */
import { targetWeight } from '../moisture/drying';
import { SEEDS_PER_THOUSAND } from './seed-count';

/** Replicates that the rule weighs, and how many are weighed in all when they vary too much. */
const REPLICATES_WEIGHED = 8;
const REPLICATES_AFTER_SECOND_ROUND = 16;
/** Largest coefficient of variation, percent. From memory (ISTA Rules chapter 10). */
const VARIATION_LIMIT_PERCENT = { ordinary: 4.0, chaffy: 6.0 } as const;
export type SeedSurface = keyof typeof VARIATION_LIMIT_PERCENT;
/** After the second round a replicate this many standard deviations from the mean of all 16 is dropped. From memory. */
const DROP_BEYOND_DEVIATIONS = 2;

export type ReplicateStatistics = {
  replicates: number;
  meanG: number;
  /** (n Sx^2 - (Sx)^2) / (n (n - 1)), grams squared */
  variance: number;
  standardDeviationG: number;
  /** coefficient of variation: 100 s / mean */
  variationPercent: number;
};

/**
 * Mean and spread of replicate weights.
 *
 * @param weightsG  grams, each > 0; at least 2
 * @returns the statistics
 * @throws RangeError when there are fewer than 2 or one is not > 0
 * @see AOSA formula as printed at http://www.frsa.org/SAfacts/App4tutorial.html (published)
 * Checked against that page's eight weights to the last printed digit, and against R: tests/golden/thousand-seed-weight.json
 */
export function replicateStatistics(weightsG: readonly number[]): ReplicateStatistics {
  if (weightsG.length < 2) {
    throw new RangeError(`replicateStatistics: weightsG must hold at least 2 replicates, got ${weightsG.length}`);
  }
  for (const weight of weightsG) {
    if (!(weight > 0 && Number.isFinite(weight))) {
      throw new RangeError(`replicateStatistics: weightsG must be finite and > 0, got ${weight}`);
    }
  }
  const replicates = weightsG.length;
  const meanG = weightsG.reduce((sum, weight) => sum + weight, 0) / replicates;
  // The printed formula subtracts two nearly equal sums; squares about the mean give the same figure with its digits.
  const variance = weightsG.reduce((sum, weight) => sum + (weight - meanG) ** 2, 0) / (replicates - 1);
  const standardDeviationG = Math.sqrt(variance);
  return { replicates, meanG, variance, standardDeviationG, variationPercent: (100 * standardDeviationG) / meanG };
}

export type ThousandSeedWeight = ReplicateStatistics & {
  thousandSeedWeightG: number;
  limitPercent: number;
  /**
   * 'within-limit': eight or more agree. 'weigh-eight-more': they vary too much, go on to 16. 'from-sixteen': settled
   * after the second round, `dropped` left out. 'too-few': fewer than eight, the limit was not meant for them.
   */
  verdict: 'within-limit' | 'weigh-eight-more' | 'from-sixteen' | 'too-few';
  /** weights left out of the mean after the second round, grams */
  dropped: number[];
};

/**
 * Thousand-seed weight by the replicate rule.
 *
 * @param weightsG           grams of each replicate, each > 0; at least 2, as a rule 8, or 16 after a second round
 * @param seedsPerReplicate  counted seeds in each, integer >= 1; as a rule 100
 * @param surface            'chaffy' for seed that clings (many grasses), with the wider limit
 * @returns the weight, spread and verdict. The spread is that of all replicates, the mean that of those kept. After 16
 *          the rule asks no further: the weight is settled, however much they vary
 * @throws RangeError when an argument is outside its range
 * @see limits and second round from memory (ISTA Rules chapter 10)
 * Checked in tests/domain/stock/thousand-seed-weight.test.ts and against R
 */
export function thousandSeedWeight({
  weightsG,
  seedsPerReplicate,
  surface = 'ordinary',
}: {
  weightsG: readonly number[];
  seedsPerReplicate: number;
  surface?: SeedSurface;
}): ThousandSeedWeight {
  if (!Number.isInteger(seedsPerReplicate) || seedsPerReplicate < 1) {
    throw new RangeError(`thousandSeedWeight: seedsPerReplicate must be an integer >= 1, got ${seedsPerReplicate}`);
  }
  const all = replicateStatistics(weightsG);
  const limitPercent = VARIATION_LIMIT_PERCENT[surface];
  const verdict = verdictOf(all, limitPercent);
  const limitG = DROP_BEYOND_DEVIATIONS * all.standardDeviationG;
  const kept =
    verdict === 'from-sixteen' ? weightsG.filter((weight) => Math.abs(weight - all.meanG) <= limitG) : weightsG;
  const dropped = weightsG.filter((weight) => !kept.includes(weight));
  const meanG = kept.reduce((sum, weight) => sum + weight, 0) / kept.length;
  return {
    ...all,
    meanG,
    thousandSeedWeightG: (meanG * SEEDS_PER_THOUSAND) / seedsPerReplicate,
    limitPercent,
    verdict,
    dropped,
  };
}

function verdictOf(all: ReplicateStatistics, limitPercent: number): ThousandSeedWeight['verdict'] {
  if (all.replicates < REPLICATES_WEIGHED) return 'too-few';
  if (all.variationPercent <= limitPercent) return 'within-limit';
  return all.replicates < REPLICATES_AFTER_SECOND_ROUND ? 'weigh-eight-more' : 'from-sixteen';
}

/**
 * Thousand-seed weight of the same seed at another moisture: the dry matter of a seed stays, its water changes.
 *
 * @param thousandSeedWeightG    grams, > 0, at moisturePercent
 * @param moisturePercent        when weighed, percent of fresh weight, in [0, 100)
 * @param targetMoisturePercent  wanted, same unit and range
 * @returns grams per 1000 seeds at the wanted moisture
 * @throws RangeError when an argument is outside its range
 * @see constant dry matter, as targetWeight
 * Checked in tests/domain/stock/thousand-seed-weight.test.ts
 */
export function thousandSeedWeightAtMoisture({
  thousandSeedWeightG,
  moisturePercent,
  targetMoisturePercent,
}: {
  thousandSeedWeightG: number;
  moisturePercent: number;
  targetMoisturePercent: number;
}): number {
  return targetWeight({ weight: thousandSeedWeightG, moisturePercent, targetMoisturePercent });
}
