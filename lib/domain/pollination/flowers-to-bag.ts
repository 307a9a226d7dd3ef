/**
 * How many flowers to bag so that there is seed enough. Not every bagged flower sets fruit, not every fruit holds as much as the
 * mean, and every mother plant should give some.
 */

import { binomialLogPmf } from '../statistics/binomial';
import { fewestBetween } from '../statistics/fewest-between';
import { gammaUpperTail } from '../statistics/gamma-tail';

/** Beyond this nobody bags by hand. */
const MOST_FLOWERS = 20_000;
/** Numbers of fruit further from the mean than this, and ten, have no weight that a double adds to a chance. */
const REACH_IN_SD = 9;
/** A spread this small, relative to the mean, is none. */
const NO_SPREAD = 1e-6;
/** A chance this close to the assurance is a tie, which rounding must not decide: it is enough. */
const TIE = 1e-12;

export interface BaggedFlowers {
  /** chance that a bagged flower gives a fruit with true seed, in (0, 1] */
  success: number;
  /** seeds in a fruit, mean, > 0 */
  seedsPerFruit: number;
  /** seeds in a fruit, standard deviation, >= 0; 0 when every fruit holds the same */
  seedsPerFruitSd: number;
}

/**
 * Chance that bagged flowers give at least so many seeds: fruits are binomial, seeds of a fruit follow a gamma distribution of
 * the given mean and spread (so that those of several fruits do too, and none is negative).
 *
 * @param flowers  bagged, integer >= 0
 * @param seeds    wanted, > 0
 * @returns chance in [0, 1]; error below 1e-12
 * @throws RangeError when an argument is outside its range
 * Checked against R `dbinom` and `pgamma`: tests/golden/flowers-to-bag.json
 */
export function chanceOfSeeds({
  flowers,
  seeds,
  ...fruit
}: BaggedFlowers & { flowers: number; seeds: number }): number {
  requireFlower('chanceOfSeeds', { seeds, ...fruit });
  if (!(Number.isInteger(flowers) && flowers >= 0)) {
    throw new RangeError(`chanceOfSeeds: flowers must be an integer >= 0, got ${flowers}`);
  }
  const mean = flowers * fruit.success;
  const reach = REACH_IN_SD * Math.sqrt(mean * (1 - fruit.success)) + 10;
  let chance = 0;
  for (let fruits = Math.max(1, Math.floor(mean - reach)); fruits <= Math.min(flowers, mean + reach); fruits += 1) {
    const weight = Math.exp(binomialLogPmf({ successes: fruits, trials: flowers, probability: fruit.success }));
    if (weight > 0) chance += weight * chanceThatFruitsHold(seeds, fruits, fruit);
  }
  return Math.min(1, chance);
}

/**
 * Fewest flowers to bag for the seeds wanted, and for some seed from every mother plant.
 *
 * @param seeds      wanted in all, > 0
 * @param plants     mother plants, integer >= 1
 * @param assurance  chance of reaching each aim, in (0, 1)
 * @returns flowers in all for the seeds; flowers a plant so that every plant gives at least one fruit; and what to bag on each
 *          plant, which serves both. Infinity beyond 20 000 flowers
 * @throws RangeError when an argument is outside its range
 * Checked on both sides against R: tests/golden/flowers-to-bag.json
 */
export function flowersToBag({
  seeds,
  plants,
  assurance,
  ...fruit
}: BaggedFlowers & { seeds: number; plants: number; assurance: number }): {
  forSeeds: number;
  perPlantForAll: number;
  perPlant: number;
} {
  requireFlower('flowersToBag', { seeds, ...fruit });
  if (!(Number.isInteger(plants) && plants >= 1)) {
    throw new RangeError(`flowersToBag: plants must be an integer >= 1, got ${plants}`);
  }
  if (!(assurance > 0 && assurance < 1)) {
    throw new RangeError(`flowersToBag: assurance must be in (0, 1), got ${assurance}`);
  }
  const forSeeds = fewestFlowers(seeds, assurance, fruit);
  // All plants bear with chance (1 - (1 - s)^k)^plants.
  const barren = -Math.expm1(Math.log(assurance) / plants);
  const perPlantForAll =
    fruit.success === 1 ? 1 : Math.max(1, Math.ceil(Math.log(barren) / Math.log1p(-fruit.success) - TIE));
  return { forSeeds, perPlantForAll, perPlant: Math.max(perPlantForAll, Math.ceil(forSeeds / plants)) };
}

/** The chance grows with every flower: bracketed by doubling, closed by halving. */
function fewestFlowers(seeds: number, assurance: number, fruit: BaggedFlowers): number {
  const isEnough = (flowers: number) => chanceOfSeeds({ flowers, seeds, ...fruit }) >= assurance - TIE;
  let tooFew = 0;
  let enough = Math.max(1, Math.ceil(seeds / (fruit.seedsPerFruit * fruit.success)));
  while (!isEnough(enough)) {
    if (enough >= MOST_FLOWERS) return Number.POSITIVE_INFINITY;
    tooFew = enough;
    enough = Math.min(MOST_FLOWERS, Math.ceil(enough * 1.3) + 1);
  }
  return fewestBetween(isEnough, tooFew, enough);
}

function chanceThatFruitsHold(
  seeds: number,
  fruits: number,
  { seedsPerFruit, seedsPerFruitSd }: BaggedFlowers,
): number {
  if (seedsPerFruitSd < NO_SPREAD * seedsPerFruit) return fruits * seedsPerFruit >= seeds * (1 - TIE) ? 1 : 0;
  const spread = (seedsPerFruitSd * seedsPerFruitSd) / seedsPerFruit;
  return gammaUpperTail(seeds / spread, (fruits * seedsPerFruit) / spread);
}

function requireFlower(
  caller: string,
  { seeds, success, seedsPerFruit, seedsPerFruitSd }: BaggedFlowers & { seeds: number },
) {
  if (!(seeds > 0 && Number.isFinite(seeds))) {
    throw new RangeError(`${caller}: seeds must be a finite number > 0, got ${seeds}`);
  }
  if (!(success > 0 && success <= 1)) throw new RangeError(`${caller}: success must be in (0, 1], got ${success}`);
  if (!(seedsPerFruit > 0 && Number.isFinite(seedsPerFruit))) {
    throw new RangeError(`${caller}: seedsPerFruit must be a finite number > 0, got ${seedsPerFruit}`);
  }
  if (!(seedsPerFruitSd >= 0 && Number.isFinite(seedsPerFruitSd))) {
    throw new RangeError(`${caller}: seedsPerFruitSd must be a finite number >= 0, got ${seedsPerFruitSd}`);
  }
}
