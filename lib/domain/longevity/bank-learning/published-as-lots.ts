/**
 * The published figures as lots: they weigh in as a number of lots whose K (or log rate) are known, and spread just as
 * published. With weight m they add to the log marginal likelihood
 *   -m (log(sd / sd0) + (sd0^2 + (mean - mean0)^2) / (2 sd^2) - 1/2)
 * which is 0 at the published figures and falls on every side. So without lots of its own the bank believes what is
 * published, a few lots move it a little, many move it to where they are, and no spread can fall to nothing.
 */

/**
 * How many lots the published figures count as. Our own choice: three lots of the bank's own weigh as much. It says that
 * a crop's own mean lies around the published one with a spread of 1 / sqrt(3), 0.58, of that from lot to lot.
 */
export const PUBLISHED_COUNTS_AS_LOTS = 3;

interface Spread {
  mean: number;
  logSd: number;
}

/**
 * What the published figures add for one of the two quantities, with its slopes.
 *
 * @param here       mean and log sd that are tried
 * @param published  mean and sd, sd > 0
 * @param weight     lots that the published figures count as, > 0
 * Checked in tests/domain/longevity/bank-learning/published-as-lots.test.ts
 */
export function publishedAsLots(
  { mean, logSd }: Spread,
  published: { mean: number; sd: number },
  weight: number,
): { height: number; byMean: number; byLogSd: number } {
  const variance = Math.exp(2 * logSd);
  const offset = mean - published.mean;
  const share = (published.sd * published.sd + offset * offset) / variance;
  return {
    height: -weight * (logSd - Math.log(published.sd) + 0.5 * share - 0.5),
    byMean: (-weight * offset) / variance,
    byLogSd: weight * (share - 1),
  };
}

/**
 * Mean and spread of the published lots and the bank's together, the bank's as far as their tests tell: a step of the EM
 * algorithm, after which the belief is never less plausible than before.
 *
 * @param here       mean and log sd believed up to now
 * @param published  mean and sd, sd > 0
 * @param weight     lots that the published figures count as, > 0
 * @param own        the bank's lots: how many, and over them the sums of the expected z and z^2 (distance from `here`'s mean
 *                   in its sd) given their tests
 * Checked in tests/domain/longevity/bank-learning/published-as-lots.test.ts
 */
export function meanAndSpreadTogether(
  { mean, logSd }: Spread,
  published: { mean: number; sd: number },
  weight: number,
  { lots, z, square }: { lots: number; z: number; square: number },
): Spread {
  const sd = Math.exp(logSd);
  const next = (weight * published.mean + lots * mean + sd * z) / (weight + lots);
  const move = mean - next;
  const ownSquares = sd * sd * square + 2 * move * sd * z + lots * move * move;
  const publishedSquares = weight * (published.sd ** 2 + (next - published.mean) ** 2);
  return { mean: next, logSd: 0.5 * Math.log((publishedSquares + ownSquares) / (weight + lots)) };
}
