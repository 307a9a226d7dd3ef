/**
 * The chance that a sowing raises the plants wanted, when every seed has the same chance of becoming a plant: the upper
 * tail of a binomial. With an uncertain chance per seed it is the average of that tail over what the chance may be.
 */
import betaCdf from '@stdlib/stats-base-dists-beta-cdf';

/** What the chance per seed may be: weights that add to 1, and the chance (0-1) that goes with each. */
export interface ChanceDistribution {
  weights: ArrayLike<number>;
  chances: ArrayLike<number>;
}

/** exp(-40) is 4e-18: a tail bounded by it adds nothing to a double near 1, so its evaluation is saved. */
const NEGLIGIBLE_EXPONENT = 40;

/**
 * Probability of at least `plants` successes among `seeds`, P(Bin(seeds, chancePerSeed) >= plants), through the
 * incomplete beta function.
 *
 * Unlike statistics/binomial it checks nothing and skips tails that round to 0 or 1: the searches here call it for
 * thousands of lots. `seeds` need not be whole.
 *
 * @param plants         integer >= 1
 * @param seeds          > 0
 * @param chancePerSeed  in [0, 1]
 * @returns probability in [0, 1]; absolute error below 1e-12
 * Checked against R `pbinom`: tests/golden/seeds-to-sow.json
 */
export function chanceOfAtLeast(plants: number, seeds: number, chancePerSeed: number): number {
  if (seeds < plants || chancePerSeed <= 0) return 0;
  if (chancePerSeed >= 1) return 1;
  const expected = seeds * chancePerSeed;
  // Chernoff's bounds on either tail (the Poisson ones, which also hold for the binomial).
  const gap = expected - plants;
  if (gap > 0 && (gap + 1) ** 2 > 2 * NEGLIGIBLE_EXPONENT * expected) return 1;
  if (gap < 0 && gap * gap > NEGLIGIBLE_EXPONENT * (expected + plants)) return 0;
  return betaCdf(chancePerSeed, plants, seeds - plants + 1);
}

/**
 * Chance that a sowing raises at least `plants` plants when the chance per seed is uncertain.
 *
 * @param plants        integer >= 1
 * @param seeds         integer >= 0
 * @param distribution  of the chance per seed
 * @returns probability in [0, 1]
 * Checked in tests/domain/regrow/seeds-to-sow-uncertain.test.ts
 */
export function chanceOfRaising(plants: number, seeds: number, { weights, chances }: ChanceDistribution): number {
  let chance = 0;
  for (let index = 0; index < weights.length; index++) {
    const weight = weights[index] as number;
    if (weight > 0) chance += weight * chanceOfAtLeast(plants, seeds, chances[index] as number);
  }
  return Math.min(chance, 1);
}
