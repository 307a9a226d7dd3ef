/** One lot of a simulated collection: how it really is, and the tests that somebody made of it. */
import type { Dish } from '../../lib/domain/germination/assumed-correlation';
import { normalCdf } from '../../lib/domain/statistics/normal-distribution';
import type { Random } from '../../seed-demo/random';
import type { Scenario } from './scenarios';

export interface SimulatedTest {
  probitsLost: number;
  dishes: Dish[];
}

export interface SimulatedLot {
  tests: SimulatedTest[];
  /** published ageing at which something is said of the lot, probits */
  probitsLost: number;
  /** its viability then, as it really is; 0-1 */
  viability: number;
  /** the line it is held against; 0-1 */
  threshold: number;
}

const MOST_TESTS = 5;
/** mean ageing between two tests, probits */
const BETWEEN_TESTS = 0.5;
/** how far ahead of the last test a forecast reaches, probits */
const FURTHEST_AHEAD = 2;
const DISHES = [1, 2, 4] as const;
const SEEDS_PER_DISH = [25, 50, 100] as const;
const THRESHOLDS = [0.5, 0.7, 0.85] as const;

export function simulateLot(random: Random, { truth }: Scenario): SimulatedLot {
  const initial = truth.initial.mean + truth.initial.sd * random.normal();
  const rate = Math.exp(truth.logRate.mean + truth.logRate.sd * random.normal());
  const viabilityAfter = (probitsLost: number) => normalCdf(initial - rate * probitsLost);
  const dishes = random.pick(DISHES);
  const seeds = random.pick(SEEDS_PER_DISH);
  const tests: SimulatedTest[] = [];
  let probitsLost = 0;
  const testCount = random.wholeBetween(0, MOST_TESTS);
  for (let test = 0; test < testCount; test += 1) {
    if (test > 0) probitsLost -= BETWEEN_TESTS * Math.log(1 - random.fraction());
    const chance = viabilityAfter(probitsLost);
    tests.push({
      probitsLost,
      dishes: Array.from({ length: dishes }, () => ({
        seeds,
        counted: aliveInDish(random, seeds, chance, truth.correlation),
      })),
    });
  }
  const ahead = probitsLost + random.between(0, FURTHEST_AHEAD);
  return { tests, probitsLost: ahead, viability: viabilityAfter(ahead), threshold: random.pick(THRESHOLDS) };
}

/** Seeds of one dish draw from an urn into which each seed drawn is put back twice: beta-binomial, exactly. */
function aliveInDish(random: Random, seeds: number, chance: number, correlation: number): number {
  if (correlation === 0) return random.binomial(seeds, chance);
  let alive = 0;
  for (let drawn = 0; drawn < seeds; drawn += 1) {
    const nextAlive = (chance * (1 - correlation) + alive * correlation) / (1 - correlation + drawn * correlation);
    if (random.fraction() < nextAlive) alive += 1;
  }
  return alive;
}
