/*
 * How many of a number of seeds germinate, when the lot's true germination is known: the chance of every count.
 *
 * Alike, independent seeds give the binomial distribution. Seeds of one dish share its water and its mould, and with an
 * intra-dish correlation above 0 each dish is beta-binomial; dishes are independent of each other, so their counts are
 * added by convolution.
 */
import { betaBinomialLogPmf } from '../../statistics/beta-binomial';
import { binomialLogPmf } from '../../statistics/binomial';
import { requireSeeds } from './require-seeds';

/** How seeds lie in dishes, and how much the seeds of one dish resemble each other. */
export interface Dishes {
  /** seeds in a dish, integer >= 1; a last, smaller dish takes what remains */
  dishSize: number;
  /** intra-dish correlation rho, in [0, 1); 0: seeds are independent and dishes do not matter */
  correlation: number;
}

/** Seeds independent of each other, the usual assumption. */
export const INDEPENDENT_SEEDS: Dishes = { dishSize: 1, correlation: 0 };

/**
 * The chance of each number of germinated seeds.
 *
 * @param seeds        seeds set, integer >= 0
 * @param germination  the lot's true germination, proportion in [0, 1]
 * @param dishes       how the seeds lie; independent seeds unless told
 * @returns `seeds + 1` probabilities, entry k for exactly k germinated; relative error of each below 1e-9
 * @throws RangeError when seeds or dishSize is no whole number in its range, or a proportion is outside its range
 * Checked against R `dbinom` and a convolution in R: tests/golden/sequential-plan.json, tests/golden/seeds-to-tell.json
 */
export function germinatedCountChances(
  seeds: number,
  germination: number,
  dishes: Dishes = INDEPENDENT_SEEDS,
): Float64Array {
  requireSeeds('germinatedCountChances', 'seeds', seeds, 0);
  requireSeeds('germinatedCountChances', 'dishSize', dishes.dishSize, 1);
  if (dishes.correlation === 0 || dishes.dishSize === 1) {
    return chancesOf(seeds, (successes) => binomialLogPmf({ successes, trials: seeds, probability: germination }));
  }
  const dish = oneDish(dishes.dishSize, germination, dishes.correlation);
  let chances: Float64Array = Float64Array.of(1);
  for (let full = Math.floor(seeds / dishes.dishSize); full > 0; full--) chances = addCounts(chances, dish);
  const rest = seeds % dishes.dishSize;
  return rest === 0 ? chances : addCounts(chances, oneDish(rest, germination, dishes.correlation));
}

/**
 * The distribution of the sum of two independent counts.
 *
 * @param first   chances of 0, 1, 2 ... of one count
 * @param second  the same of the other
 * @returns chances of 0, 1, 2 ... of the sum
 * Checked through germinatedCountChances
 */
export function addCounts(first: Float64Array, second: Float64Array): Float64Array {
  const sum = new Float64Array(first.length + second.length - 1);
  for (let i = 0; i < first.length; i++) {
    const chance = first[i] as number;
    if (chance === 0) continue;
    for (let j = 0; j < second.length; j++) sum[i + j] = (sum[i + j] as number) + chance * (second[j] as number);
  }
  return sum;
}

function oneDish(trials: number, mean: number, correlation: number): Float64Array {
  return chancesOf(trials, (successes) => betaBinomialLogPmf({ successes, trials, mean, correlation }));
}

function chancesOf(seeds: number, logChance: (germinated: number) => number): Float64Array {
  return Float64Array.from({ length: seeds + 1 }, (_, germinated) => Math.exp(logChance(germinated)));
}
