import { type ClassCounts, SEED_CLASSES } from '../seed-classes';
import { NOTHING_FOUND, sayTheSame, type TrayCount } from './tray-count';

/**
 * What was found on a day on which several people counted the same dish one after the other, each taking out what they
 * found. Counts that say the same are one finding written down twice; one that was taken back adds nothing.
 *
 * @param counts  of one dish and day
 * @returns sums by class
 * Checked in tests/domain/germination/bench/one-after-the-other.test.ts
 */
export function oneAfterTheOther(counts: readonly TrayCount[]): ClassCounts {
  const total = { ...NOTHING_FOUND };
  for (const [index, { found }] of counts.entries()) {
    if (found === null || counts.slice(0, index).some((earlier) => sayTheSame(earlier.found, found))) continue;
    for (const seedClass of SEED_CLASSES) total[seedClass] += found[seedClass];
  }
  return total;
}
