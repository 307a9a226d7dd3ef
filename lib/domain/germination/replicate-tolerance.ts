/*
 * How far apart replicates of one germination test may lie before the test is not to be trusted.
 *
 * Four or two replicates of 100 have a published table. Every other shape gets a range derived on the same footing: the
 * smallest whole number of percentage points that the range of that many binomial replicates exceeds with a chance of
 * at most 2.5 %. For the shapes in the table the derived figure is never more than 1 point from the published one.
 */
import { binomialRangeExceedance } from '../statistics/binomial-range';
import { type NormalCount, roundedMeanPercent } from './normal-count';

export type ToleranceBasis = 'published' | 'derived';

export type ReplicateTolerance =
  | { ok: true; toleratedRange: number; basis: ToleranceBasis }
  | { ok: false; reason: 'one-replicate' | 'too-few-seeds' };

/** Chance that alike replicates are further apart than tolerated. */
const DERIVED_LEVEL = 0.025;

/** Our own choice: with fewer seeds a dish, replicates as far apart as 60 points would still have to pass. */
const FEWEST_SEEDS_PER_REPLICATE = 10;

/*
 * 7 CFR 201.55(a), edition of 2015: [rounded mean percent, range for 4 x 100, range for 2 x 100], in percentage points.
 * The table is symmetric, with means that add to 101 on one line. Its print errors at the low means 39 ("38") and 49
 * ("48") vanish by keeping the high means only. Blank where the table is blank.
 */
const PUBLISHED_RANGES: ReadonlyArray<readonly [number, number, number | null]> = [
  [99, 5, null],
  [98, 6, null],
  [97, 7, 6],
  [96, 8, 6],
  [95, 9, 7],
  [94, 10, 8],
  [93, 10, 8],
  [92, 11, 9],
  [91, 11, 9],
  [90, 12, 9],
  [89, 12, 10],
  [88, 13, 10],
  [87, 13, 11],
  [86, 14, 11],
  [85, 14, 11],
  [84, 14, 11],
  [83, 15, 12],
  [82, 15, 12],
  [81, 15, 12],
  [80, 16, 13],
  [79, 16, 13],
  [78, 16, 13],
  [77, 17, 13],
  [76, 17, 13],
  [75, 17, 14],
  [74, 17, 14],
  [73, 17, 14],
  [72, 18, 14],
  [71, 18, 14],
  [70, 18, 14],
  [69, 18, 14],
  [68, 18, 15],
  [67, 18, 15],
  [66, 19, 15],
  [65, 19, 15],
  [64, 19, 15],
  [63, 19, 15],
  [62, 19, 15],
  [61, 19, 15],
  [60, 19, 15],
  [59, 19, 15],
  [58, 19, 15],
  [57, 19, 15],
  [56, 19, 15],
  [55, 20, 15],
  [54, 20, 16],
  [53, 20, 16],
  [52, 20, 16],
  [51, 20, 16],
];

/**
 * Largest range between replicates (highest minus lowest percentage of normal seedlings) that chance explains.
 *
 * @param replicates  as counted: seeds (integer, >= 1) and normal (integer, 0 to seeds); sizes may differ
 * @returns toleratedRange in percentage points, whole; basis 'published' (7 CFR 201.55, four or two replicates of 100,
 *          rounded mean 2-99 % where the table has a figure) or 'derived'; or a refusal: a single replicate, or fewer
 *          than 10 seeds in one
 * @see 7 CFR 201.55(a); the derivation: docs/methods/replicate-tolerance.md
 * Checked against the published table and R: tests/golden/replicate-tolerance.json
 */
export function replicateTolerance(replicates: readonly NormalCount[]): ReplicateTolerance {
  if (replicates.length < 2) return { ok: false, reason: 'one-replicate' };
  if (replicates.some((replicate) => replicate.seeds < FEWEST_SEEDS_PER_REPLICATE)) {
    return { ok: false, reason: 'too-few-seeds' };
  }
  const published = publishedRange(replicates);
  if (published !== null) return { ok: true, toleratedRange: published, basis: 'published' };
  return { ok: true, toleratedRange: derivedToleratedRange(replicates), basis: 'derived' };
}

/**
 * Tolerated range by derivation alone, for any shape of test: the smallest whole number of percentage points that the
 * range of alike binomial replicates exceeds with a chance of at most 2.5 %, at the pooled proportion found.
 *
 * @param replicates  at least 1; seeds (integer, >= 1) and normal (integer, 0 to seeds)
 * @returns whole percentage points, 0-100; 0 where all seeds or none germinated
 * Checked against R: tests/golden/replicate-tolerance.json
 */
export function derivedToleratedRange(replicates: readonly NormalCount[]): number {
  const trials = replicates.map((replicate) => replicate.seeds);
  const seeds = trials.reduce((sum, count) => sum + count, 0);
  const probability = replicates.reduce((sum, replicate) => sum + replicate.normal, 0) / seeds;
  const exceedance = binomialRangeExceedance({ trials, probability });
  let points = 0;
  while (points < 100 && exceedance(points / 100) > DERIVED_LEVEL) points++;
  return points;
}

function publishedRange(replicates: readonly NormalCount[]): number | null {
  if (replicates.some((replicate) => replicate.seeds !== 100)) return null;
  if (replicates.length !== 4 && replicates.length !== 2) return null;
  const mean = roundedMeanPercent(replicates);
  const line = PUBLISHED_RANGES.find(([high]) => high === (mean > 50 ? mean : 101 - mean));
  if (!line) return null;
  return replicates.length === 4 ? line[1] : line[2];
}
