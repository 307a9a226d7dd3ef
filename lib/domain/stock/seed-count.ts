/**
 * Seeds and grams, linked by the thousand-seed weight: the weight in grams of 1000 seeds at the moisture in which they
 * were weighed. From orchid dust to coconut it spans ten orders of magnitude, so only the sign is checked.
 */

export const SEEDS_PER_THOUSAND = 1000;

/**
 * How many seeds a weight holds.
 *
 * @param weightG              grams of clean seed, >= 0
 * @param thousandSeedWeightG  grams per 1000 seeds, > 0
 * @returns whole seeds, to the nearest
 * @throws RangeError when an argument is outside its range
 * Checked in tests/domain/stock/seed-count.test.ts
 */
export function seedsFromWeight({
  weightG,
  thousandSeedWeightG,
}: {
  weightG: number;
  thousandSeedWeightG: number;
}): number {
  requireThousandSeedWeight('seedsFromWeight', thousandSeedWeightG);
  if (!Number.isFinite(weightG) || weightG < 0) {
    throw new RangeError(`seedsFromWeight: weightG must be a finite number >= 0, got ${weightG}`);
  }
  return Math.round((weightG * SEEDS_PER_THOUSAND) / thousandSeedWeightG);
}

/**
 * What a number of seeds weighs.
 *
 * @param seeds                count, integer >= 0
 * @param thousandSeedWeightG  grams per 1000 seeds, > 0
 * @returns grams
 * @throws RangeError when an argument is outside its range
 * Checked in tests/domain/stock/seed-count.test.ts
 */
export function weightFromSeeds({
  seeds,
  thousandSeedWeightG,
}: {
  seeds: number;
  thousandSeedWeightG: number;
}): number {
  requireThousandSeedWeight('weightFromSeeds', thousandSeedWeightG);
  if (!Number.isInteger(seeds) || seeds < 0) {
    throw new RangeError(`weightFromSeeds: seeds must be an integer >= 0, got ${seeds}`);
  }
  return (seeds * thousandSeedWeightG) / SEEDS_PER_THOUSAND;
}

/**
 * Thousand-seed weight from one counted and weighed sample.
 *
 * @param seeds    seeds counted, integer >= 1
 * @param weightG  their weight, grams, > 0
 * @returns grams per 1000 seeds
 * @throws RangeError when an argument is outside its range
 * Checked in tests/domain/stock/seed-count.test.ts
 */
export function thousandSeedWeightFromCount({ seeds, weightG }: { seeds: number; weightG: number }): number {
  if (!Number.isInteger(seeds) || seeds < 1) {
    throw new RangeError(`thousandSeedWeightFromCount: seeds must be an integer >= 1, got ${seeds}`);
  }
  if (!Number.isFinite(weightG) || weightG <= 0) {
    throw new RangeError(`thousandSeedWeightFromCount: weightG must be a finite number > 0, got ${weightG}`);
  }
  return (weightG * SEEDS_PER_THOUSAND) / seeds;
}

/** Throws RangeError, naming the caller, unless the thousand-seed weight is a finite number > 0. */
export function requireThousandSeedWeight(caller: string, thousandSeedWeightG: number): void {
  if (!Number.isFinite(thousandSeedWeightG) || thousandSeedWeightG <= 0) {
    throw new RangeError(`${caller}: thousandSeedWeightG must be a finite number > 0, got ${thousandSeedWeightG}`);
  }
}
