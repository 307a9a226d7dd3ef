/** A replicate as far as germination goes: how many seeds were set and how many gave a normal seedling. */
export interface NormalCount {
  /** count, integer, >= 1 */
  seeds: number;
  /** count, integer, 0 <= normal <= seeds */
  normal: number;
}

/**
 * Mean germination of all seeds, to the nearest whole percent, a half upwards.
 *
 * @param replicates  at least one
 * @returns whole percent, 0-100; worked in whole numbers, so that 86.5 % is exactly a half
 * Checked in tests/domain/germination/normal-count.test.ts
 */
export function roundedMeanPercent(replicates: readonly NormalCount[]): number {
  const seeds = replicates.reduce((sum, replicate) => sum + replicate.seeds, 0);
  const normal = replicates.reduce((sum, replicate) => sum + replicate.normal, 0);
  return Math.floor((200 * normal + seeds) / (2 * seeds));
}

/**
 * Range between replicates: highest minus lowest percentage of normal seedlings.
 *
 * @param replicates  at least one
 * @returns percentage points, 0-100
 * Checked in tests/domain/germination/normal-count.test.ts
 */
export function rangeInPoints(replicates: readonly NormalCount[]): number {
  const percents = replicates.map(({ seeds, normal }) => (100 * normal) / seeds);
  const range = Math.max(...percents) - Math.min(...percents);
  // Thirds and sevenths leave a dust of 1e-15 that would tip a range equal to the tolerated one over the edge.
  return Math.round(range * 1e9) / 1e9;
}

/**
 * Joins the 8 x 50 or 16 x 25 small dishes of a 400-seed test into four replicates of 100, neighbours together, in the
 * order in which they were entered. Any other shape comes back as it is.
 *
 * @param replicates  as set
 * @returns the replicates to compare
 * @see the joining of 50- and 25-seed dishes is international testing practice (from memory)
 * Checked in tests/domain/germination/normal-count.test.ts
 */
export function joinIntoHundreds(replicates: readonly NormalCount[]): readonly NormalCount[] {
  const size = replicates[0]?.seeds;
  const alike = replicates.every((replicate) => replicate.seeds === size);
  if (!alike || (size !== 50 && size !== 25) || replicates.length * size !== 400) return replicates;
  const together = 100 / size;
  return [0, 1, 2, 3].map((hundred) => ({
    seeds: 100,
    normal: replicates
      .slice(hundred * together, (hundred + 1) * together)
      .reduce((sum, replicate) => sum + replicate.normal, 0),
  }));
}
