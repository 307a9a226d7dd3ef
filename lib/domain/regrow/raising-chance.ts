/**
 * The chance that a sowing raises the plants wanted, when every seed has the same chance of becoming a plant: the upper
 * tail of a binomial.
 */
import { binomialTailCurve } from '../statistics/binomial-tail-curve';

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
