/** The five classes into which every seed of a finished test falls, in the order of a test sheet. */
export const SEED_CLASSES = ['normal', 'abnormal', 'hard', 'fresh', 'dead'] as const;

export type SeedClass = (typeof SEED_CLASSES)[number];

export type ClassCounts = Record<SeedClass, number>;

/** One dish, counted to the end: every seed set is in one class. */
export interface ClassedReplicate extends ClassCounts {
  /** seeds set, integer, >= 1 */
  seeds: number;
}

/**
 * Refuses replicates that are not a finished count.
 *
 * @param functionName  the caller, named in the message
 * @param replicates    at least one; counts are integers >= 0 and the five classes add to the seeds
 * @throws RangeError naming the replicate (from 1), the argument and the value
 * Checked through `summariseTest`: tests/domain/germination/result.test.ts
 */
export function requireClassedReplicates(functionName: string, replicates: readonly ClassedReplicate[]): void {
  if (replicates.length === 0) throw new RangeError(`${functionName}: replicates must hold at least one, got none`);
  for (const [index, replicate] of replicates.entries()) {
    const where = `${functionName}: replicate ${index + 1}`;
    if (!Number.isSafeInteger(replicate.seeds) || replicate.seeds < 1) {
      throw new RangeError(`${where}: seeds must be a whole number of at least 1, got ${replicate.seeds}`);
    }
    let classed = 0;
    for (const seedClass of SEED_CLASSES) {
      const count = replicate[seedClass];
      if (!Number.isSafeInteger(count) || count < 0) {
        throw new RangeError(`${where}: ${seedClass} must be a whole number of at least 0, got ${count}`);
      }
      classed += count;
    }
    if (classed !== replicate.seeds) {
      throw new RangeError(`${where}: the classes must add to ${replicate.seeds} seeds, got ${classed}`);
    }
  }
}

/**
 * Sums each class over replicates.
 *
 * @returns counts, integers >= 0
 * Checked through `summariseTest`: tests/domain/germination/result.test.ts
 */
export function totalByClass(replicates: readonly ClassedReplicate[]): ClassCounts {
  const totals: ClassCounts = { normal: 0, abnormal: 0, hard: 0, fresh: 0, dead: 0 };
  for (const replicate of replicates) for (const seedClass of SEED_CLASSES) totals[seedClass] += replicate[seedClass];
  return totals;
}
