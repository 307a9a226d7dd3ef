/**
 * The search behind `seedsToSowUncertain`. The chance of raising the plants, as a probit, is smooth in the logarithm of the
 * seeds and follows from one traced curve for many numbers of seeds, so the posterior is looked at but a few times.
 */
import { chanceBelowProbit, roughProbit } from '../longevity/chance-below-probit';
import { fastProbit } from '../longevity/fast-probit';
import { normalCdf, normalQuantile } from '../statistics/normal-distribution';
import { chanceAlongCurve, foundAlong, type LotAtSowing, traceCurve } from './chance-from-sowing';

/** Beyond ten million seeds nobody sows a regrowing: an uncertain lot that needs more cannot be relied on at all. */
export const MOST_SEEDS = 10_000_000;

/** Above so many seeds for a plant it is asked first whether any number is enough. */
const DOUBTFUL_RATIO = 30;
const MOST_ROUNDS = 60;
const MOST_STEPS_ALONG = 12;
/** Of the foot, in the curve's own length; see chance-from-sowing.ts. */
const MOST_DRIFT = 0.7;
/** In the logarithm of the seeds: a tenth of a seed among two hundred. */
const TOLERANCE = 5e-4;
const LONGEST_STEP = 0.7;
const NUDGE = 0.01;
const WIDEST_PROBIT = 9;
const LEAST_CHANCE = 1e-12;

/**
 * Fewest seeds for which the chance of raising the plants reaches the assurance.
 *
 * @param lot        posterior, ageing and emergence
 * @param plants     integer >= 1
 * @param assurance  in (0, 1)
 * @returns integer >= plants; Infinity when ten million seeds are not enough
 * Checked against dense integration: tests/domain/regrow/seeds-to-sow-uncertain.test.ts
 */
export function seedsForAssurance(lot: LotAtSowing, plants: number, assurance: number): number {
  const goal = normalQuantile(assurance);
  let tooFew = plants; // or just enough
  let enough = MOST_SEEDS;
  let seeds = guess(lot, plants, goal);
  if (seeds > DOUBTFUL_RATIO * plants && !isEverEnough(lot, plants, assurance)) return Number.POSITIVE_INFINITY;
  for (let round = 0; round < MOST_ROUNDS && enough > tooFew * (1 + TOLERANCE); round += 1) {
    const settled = traceCurve(lot, plants, seeds);
    if (settled === null) {
      const found = solveAlongCurve(plants, goal, seeds);
      if (foundAlong.drift < MOST_DRIFT) return Math.min(wholeSeeds(found, plants), MOST_SEEDS);
      const chance = chanceAlongCurve(plants, seeds);
      if (chance >= assurance) enough = Math.min(enough, seeds);
      else tooFew = Math.max(tooFew, seeds);
      seeds = found > tooFew && found < enough ? found : Math.sqrt(tooFew * enough);
    } else if (settled >= assurance) {
      enough = seeds;
      seeds = Math.max(Math.sqrt(tooFew * enough), 0.5 * seeds);
    } else {
      if (seeds >= MOST_SEEDS) return Number.POSITIVE_INFINITY;
      tooFew = seeds;
      seeds = Math.min(Math.sqrt(tooFew * enough), 2 * seeds);
    }
  }
  return enough >= MOST_SEEDS ? Number.POSITIVE_INFINITY : wholeSeeds(enough, plants);
}

const wholeSeeds = (seeds: number, plants: number): number =>
  Math.max(plants, Math.ceil(seeds * (1 - 0.1 * TOLERANCE)));

/** As if viability and the luck of the seeds were both normal in probits, and together the lot's misfortune. */
function guess({ posterior, probitsLost, emergence }: LotAtSowing, plants: number, goal: number): number {
  const { mean, sd } = roughProbit(posterior, probitsLost, WIDEST_PROBIT);
  const alive = normalCdf(mean);
  const density = Math.exp(-0.5 * mean * mean) / Math.sqrt(2 * Math.PI);
  const luck = (Math.sqrt((1 - emergence * alive) / plants) * alive) / Math.max(density, 1e-3);
  const unlucky = normalCdf(Math.max(-WIDEST_PROBIT, mean - goal * Math.hypot(sd, Math.min(luck, 1))));
  return Math.min(MOST_SEEDS, Math.max(plants, plants / emergence / unlucky));
}

/** Whether even ten million seeds would do: then only lots that are as good as dead fail. */
function isEverEnough({ posterior, probitsLost, emergence }: LotAtSowing, plants: number, assurance: number): boolean {
  const needed = normalQuantile(Math.min(1, plants / MOST_SEEDS / emergence));
  return chanceBelowProbit(posterior, probitsLost, Math.min(WIDEST_PROBIT, needed)) <= 1 - assurance;
}

/** The number of seeds, not whole, at which the chance along the traced curve is as wanted, or where the curve ends. */
function solveAlongCurve(plants: number, goal: number, start: number): number {
  const least = Math.log(plants);
  const errorAt = (logSeeds: number): number => {
    const chance = chanceAlongCurve(plants, Math.max(plants, Math.exp(logSeeds)));
    return fastProbit(Math.min(1 - LEAST_CHANCE, Math.max(LEAST_CHANCE, chance))) - goal;
  };
  let here = Math.log(start);
  let error = errorAt(here);
  let before = here + NUDGE;
  let errorBefore = errorAt(before);
  for (let step = 0; step < MOST_STEPS_ALONG; step += 1) {
    const slope = (error - errorBefore) / (here - before);
    const move =
      slope > 0 ? Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, -error / slope)) : -Math.sign(error) * NUDGE;
    const next = Math.max(least, here + move);
    if (Math.abs(next - here) < TOLERANCE) {
      here = next;
      break;
    }
    before = here;
    errorBefore = error;
    here = next;
    error = errorAt(here);
    if (foundAlong.drift > MOST_DRIFT) break;
  }
  return Math.exp(here);
}
