/**
 * The chance that a sowing raises the plants wanted, when every seed has the same chance of becoming a plant: the upper
 * tail of a binomial. With an uncertain chance per seed it is the average of that tail over what the chance may be.
 */
import { binomialTailCurve } from '../statistics/binomial-tail-curve';

/** What the chance per seed may be: weights that add to 1, and the chance (0-1) that goes with each. */
export interface ChanceDistribution {
  weights: ArrayLike<number>;
  chances: ArrayLike<number>;
}

/**
 * Probability of at least `plants` successes among `seeds`, P(Bin(seeds, chancePerSeed) >= plants), through the
 * incomplete beta function.
 *
 * Unlike statistics/binomial it checks nothing and skips tails that round to 0 or 1. `seeds` need not be whole.
 *
 * @param plants         integer >= 1
 * @param seeds          > 0
 * @param chancePerSeed  in [0, 1]
 * @returns probability in [0, 1]; absolute error below 1e-12
 * Checked against R `pbinom`: tests/golden/seeds-to-sow.json
 */
export function chanceOfAtLeast(plants: number, seeds: number, chancePerSeed: number): number {
  return seeds < plants ? 0 : binomialTailCurve(plants, seeds)(chancePerSeed);
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
  if (seeds < plants) return 0;
  const chanceOfEnough = binomialTailCurve(plants, seeds);
  let chance = 0;
  for (let index = 0; index < weights.length; index++) {
    const weight = weights[index] as number;
    if (weight > 0) chance += weight * chanceOfEnough(chances[index] as number);
  }
  return Math.min(chance, 1);
}
