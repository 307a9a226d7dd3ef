/**
 * Seeds in a packet from its weight, with honest ends; and grams to weigh out so that enough seeds are sure to be there.
 *
 * Seeds differ. If one seed weighs mu with standard deviation sigma, and seeds fall into dishes at random, a replicate
 * of n seeds varies by sigma sqrt(n): so the replicates that gave the thousand-seed weight also tell sigma. A packet of
 * N seeds then weighs N mu, give or take
 *   V(N) = sigma^2 N          the packet's own seeds
 *        + N^2 (s^2/r + d1^2/12) / n^2   what r replicates leave unsure of mu, and the balance they were weighed on
 *        + d2^2/12            the balance the packet was weighed on (steps d1, d2)
 * with sigma^2 = s^2/n. The interval is every N with (W - N x/n)^2 <= t^2 V(N), t with r - 1 degrees of freedom: a
 * quadratic in N. Rounding of the replicates counts in full, since a coarse balance may round all of them alike.
 */
import { requireProportion } from '../statistics/require-proportion';
import { studentTQuantile } from '../statistics/student-t';
import { replicateStatistics } from './thousand-seed-weight';

export type SeedSample = {
  /** grams of each counted replicate, > 0; at least 2 */
  weightsG: readonly number[];
  /** counted seeds in each, integer >= 1 */
  seedsPerReplicate: number;
  /** smallest step of the balance they were weighed on, grams, >= 0 */
  stepG: number;
};

export type SeedsByWeight =
  | {
      ok: true;
      /** whole seeds, to the nearest */
      seeds: number;
      /** whole seeds, rounded outward */
      lower: number;
      upper: number;
      level: number;
    }
  | { ok: false; reason: 'seed-weight-too-uncertain' };

/**
 * How many seeds a packet holds, with an interval.
 *
 * @param weightG     grams of clean seed in the packet, > 0, as dry as the sample was
 * @param sample      replicates of the same seed
 * @param stepG       smallest step of the balance the packet was weighed on, grams, >= 0
 * @param level       of the interval, in (0, 1); 0.95 by default
 * @returns seeds and interval; 'seed-weight-too-uncertain' when the replicates differ so much that no upper end exists
 * @throws RangeError when an argument is outside its range
 * @see Fieller's argument for a ratio (general method), with the packet's own variation added: own derivation
 * Checked against R (uniroot on the pivot) and by simulated packets: tests/golden/seeds-by-weight.json
 */
export function seedsByWeight({
  weightG,
  sample,
  stepG,
  level = 0.95,
}: {
  weightG: number;
  sample: SeedSample;
  stepG: number;
  level?: number;
}): SeedsByWeight {
  if (!(weightG > 0 && Number.isFinite(weightG))) {
    throw new RangeError(`seedsByWeight: weightG must be finite and > 0, got ${weightG}`);
  }
  requireProportion('seedsByWeight', 'level', level, true);
  const { seedG, perSeed, perSeedSquared, fixed, replicates } = spread('seedsByWeight', sample, stepG);
  const t = studentTQuantile((1 + level) / 2, replicates - 1);
  // (seedG^2 - t^2 perSeedSquared) N^2 - (2 W seedG + t^2 perSeed) N + W^2 - t^2 fixed <= 0
  const a = seedG ** 2 - t ** 2 * perSeedSquared;
  const b = 2 * weightG * seedG + t ** 2 * perSeed;
  const c = weightG ** 2 - t ** 2 * fixed;
  if (a <= 0) return { ok: false, reason: 'seed-weight-too-uncertain' };
  // Positive for any real packet: at N = W / seedG the pivot is 0, so there the quadratic is <= 0.
  const root = Math.sqrt(Math.max(0, b * b - 4 * a * c));
  const upper = (b + root) / (2 * a);
  // The lower root as c over the upper: the difference b - root would lose its digits. Below 0 there are no seeds.
  const lower = Math.max(0, c / (a * upper));
  return {
    ok: true,
    seeds: Math.round(weightG / seedG),
    lower: Math.floor(lower + ROUNDING_SLACK),
    upper: Math.ceil(upper - ROUNDING_SLACK),
    level,
  };
}

/** 300.0000000001 seeds are 300: arithmetic, not another seed. */
const ROUNDING_SLACK = 1e-6;

/**
 * Grams to weigh out so that at least so many seeds are there.
 *
 * @param seeds      wanted, integer >= 1
 * @param sample     replicates of the same seed, as dry
 * @param stepG      smallest step of the balance, grams, >= 0
 * @param assurance  chance that there are at least so many, in [0.5, 1); 0.95 by default
 * @returns `expectedG` what they weigh on average; `weightG` what to weigh out, not rounded to the balance
 * @throws RangeError when an argument is outside its range
 * @see upper prediction limit of the weight of N seeds (own derivation, as seedsByWeight)
 * Checked against R and by simulated packets: tests/golden/seeds-by-weight.json
 */
export function gramsForSeeds({
  seeds,
  sample,
  stepG,
  assurance = 0.95,
}: {
  seeds: number;
  sample: SeedSample;
  stepG: number;
  assurance?: number;
}): { expectedG: number; weightG: number; assurance: number } {
  if (!Number.isInteger(seeds) || seeds < 1) {
    throw new RangeError(`gramsForSeeds: seeds must be an integer >= 1, got ${seeds}`);
  }
  requireProportion('gramsForSeeds', 'assurance', assurance, true);
  if (assurance < 0.5) throw new RangeError(`gramsForSeeds: assurance must be at least 0.5, got ${assurance}`);
  const { seedG, perSeed, perSeedSquared, fixed, replicates } = spread('gramsForSeeds', sample, stepG);
  const t = studentTQuantile(assurance, replicates - 1);
  const expectedG = seeds * seedG;
  const variance = perSeed * seeds + perSeedSquared * seeds ** 2 + fixed;
  return { expectedG, weightG: expectedG + t * Math.sqrt(variance), assurance };
}

/** V(N) as perSeed N + perSeedSquared N^2 + fixed, and the mean weight of one seed. */
function spread(caller: string, { weightsG, seedsPerReplicate, stepG: sampleStepG }: SeedSample, stepG: number) {
  if (!Number.isInteger(seedsPerReplicate) || seedsPerReplicate < 1) {
    throw new RangeError(`${caller}: seedsPerReplicate must be an integer >= 1, got ${seedsPerReplicate}`);
  }
  for (const step of [sampleStepG, stepG]) {
    if (!(step >= 0 && Number.isFinite(step))) {
      throw new RangeError(`${caller}: stepG must be finite and >= 0, got ${step}`);
    }
  }
  const { meanG, variance, replicates } = replicateStatistics(weightsG);
  return {
    replicates,
    seedG: meanG / seedsPerReplicate,
    perSeed: variance / seedsPerReplicate,
    perSeedSquared: (variance / replicates + sampleStepG ** 2 / 12) / seedsPerReplicate ** 2,
    fixed: stepG ** 2 / 12,
  };
}
