import { type ClassCounts, SEED_CLASSES } from '../seed-classes';

/**
 * What was found, for a sentence: '12 normal, 1 dead'.
 *
 * @param found  counts by class; null: the count was taken back
 * @returns 'nothing' where nothing was found
 * Checked in tests/domain/germination/bench/counts-in-words.test.ts
 */
export function countsInWords(found: ClassCounts | null): string {
  if (found === null) return 'taken back';
  const parts = SEED_CLASSES.filter((seedClass) => found[seedClass] > 0).map(
    (seedClass) => `${found[seedClass]} ${seedClass}`,
  );
  return parts.length === 0 ? 'nothing' : parts.join(', ');
}
