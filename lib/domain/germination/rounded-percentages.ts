import type { ClassCounts, SeedClass } from './seed-classes';

/** Also the order in which equal remainders are served. */
const ROUNDED_AFTER_NORMAL: readonly SeedClass[] = ['abnormal', 'hard', 'fresh', 'dead'];

/**
 * Whole percentages of the five classes that add to exactly 100.
 *
 * Normal is rounded to the nearest whole percent by itself, a half upwards, so that the germination on a label is the
 * same wherever it stands. The other four share what is left by largest remainder: each gets its whole part, and the
 * points still missing go one each to the largest fractions; of equal fractions the earlier on the test sheet
 * (abnormal, hard, fresh, dead) goes first. Worked in whole numbers, so no fraction is decided by rounding error.
 *
 * @param counts  integers >= 0, not all 0
 * @returns whole percents, each less than 1 from its exact value, together 100
 * @throws RangeError when all counts are 0
 * @see rule of international testing practice (from memory)
 * Checked in tests/domain/germination/rounded-percentages.test.ts
 */
export function roundedPercentages(counts: ClassCounts): ClassCounts {
  const seeds = counts.normal + counts.abnormal + counts.hard + counts.fresh + counts.dead;
  if (!(seeds > 0)) throw new RangeError(`roundedPercentages: counts must add to at least 1, got ${seeds}`);
  const result: ClassCounts = { normal: 0, abnormal: 0, hard: 0, fresh: 0, dead: 0 };
  result.normal = Math.floor((200 * counts.normal + seeds) / (2 * seeds));
  let missing = 100 - result.normal;
  for (const seedClass of ROUNDED_AFTER_NORMAL) {
    result[seedClass] = Math.floor((100 * counts[seedClass]) / seeds);
    missing -= result[seedClass];
  }
  const remainder = (seedClass: SeedClass): number => (100 * counts[seedClass]) % seeds;
  const byRemainder = [...ROUNDED_AFTER_NORMAL].sort((a, b) => remainder(b) - remainder(a));
  for (const seedClass of byRemainder.slice(0, missing)) result[seedClass] += 1;
  return result;
}
