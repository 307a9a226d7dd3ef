/**
 * The caution that the equation is too hopeful about long storage. A review of old collections found half-lives of 40 to
 * 60 years in cool dry stores, and two or three times that at -18 to -20 C: far below what the equation gives for dry seed.
 * Solberg et al. (2020), Front. Plant Sci. 11:1007, https://pmc.ncbi.nlm.nih.gov/articles/PMC7347988 (published).
 */
import { normalQuantile } from '../statistics/normal-distribution';

const DAYS_PER_YEAR = 365.25;
/** Seen half-lives, years; the freezer's are two times the least and three times the greatest of the cool store's. */
const SEEN_COOL = { from: 40, to: 60 };
const SEEN_FREEZER = { from: 80, to: 180 };
/** Where the freezer's figures are used rather than the cool store's, degrees C. Our own choice. */
const FREEZER_C = -10;

/**
 * A caution where the equation's half-life is longer than those that were seen in old collections.
 *
 * @param daysPerProbit     the equation's pace, days, > 0
 * @param initialViability  proportion in (0, 1)
 * @param temperatureC      degrees C of the store
 * @returns one plain sentence, or null where the equation stays within what was seen (or the seed is half dead already)
 * @throws RangeError when a figure is outside its range
 * Checked on both sides of each limit in tests/domain/longevity/optimism-caution.test.ts
 */
export function optimismCaution({
  daysPerProbit,
  initialViability,
  temperatureC,
}: {
  daysPerProbit: number;
  initialViability: number;
  temperatureC: number;
}): string | null {
  if (!(daysPerProbit > 0))
    throw new RangeError(`optimismCaution: daysPerProbit must be above 0, got ${daysPerProbit}`);
  if (!(initialViability > 0 && initialViability < 1)) {
    throw new RangeError(`optimismCaution: initialViability must be between 0 and 1, got ${initialViability}`);
  }
  const inFreezer = temperatureC <= FREEZER_C;
  const seen = inFreezer ? SEEN_FREEZER : SEEN_COOL;
  const halfLifeYears = (normalQuantile(initialViability) * daysPerProbit) / DAYS_PER_YEAR;
  if (halfLifeYears <= seen.to) return null;
  const store = inFreezer ? 'freezers' : 'cool, dry stores';
  return `The equation is too hopeful about long storage: in old collections half the seed was dead after ${seen.from} to ${seen.to} years in ${store}, whatever it says. Do not build on more; test.`;
}
