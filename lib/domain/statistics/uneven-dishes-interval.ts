/*
 * How far a germination figure can be trusted when the dishes of a test need not be alike.
 *
 * The binomial intervals take every seed as independent. Where seeds of one dish share its moisture and its mould they
 * are too narrow. Here each dish has its own chance, drawn from a beta distribution about the lot's mean (the
 * beta-binomial), and the interval holds every mean that explains the dishes nearly as well as the best one does,
 * whatever unevenness suits it: a profile likelihood. No unevenness has to be assumed, and a few dishes that happen to
 * agree do not prove that there is none.
 *
 * Where the correlation is known from elsewhere (many pooled tests), `wilsonForAlikeSeeds` uses it, and then one dish is
 * enough.
 */

import type { Interval } from './binomial-interval';
import { inverseLogOdds } from './log-odds';
import { normalQuantile } from './normal-distribution';
import { requireCounts } from './require-counts';
import { requireProportion } from './require-proportion';
import { rootBetween } from './root-between';
import type { DishCount } from './uneven-dishes-likelihood';
import { unevenDishesProfile } from './uneven-dishes-profile';
import { wilsonBounds } from './wilson-bounds';

export type UnevenDishesInterval =
  | {
      ok: true;
      /** proportion in (0, 1) */
      lower: number;
      /** proportion in (0, 1) */
      upper: number;
      /** probability in (0, 1): 0.95, not 95 */
      level: number;
      /** the mean that explains the dishes best; with dishes of unequal size not quite the share of all seeds */
      mean: number;
      /** the intra-replicate correlation that goes with it, 0-1: the maximum-likelihood estimate */
      correlation: number;
    }
  | { ok: false; reason: 'one-replicate' | 'nothing-differs' | 'one-seed-a-dish' | 'too-many-seeds' };

/** The likelihood is a sum over the seeds of a dish: with more it would take longer than a page may. */
const MOST_SEEDS_A_DISH = 2000;
/** Bounds are sought as log odds; a bracket this short is a relative error of 1e-12 in the proportion. */
const LOG_ODDS_TOLERANCE = 1e-12;

/**
 * Two-sided profile-likelihood interval for the mean germination of unequal dishes.
 *
 * The bounds are the means p at which 2 (l(best) - l(p)) equals the chi-square quantile of one degree of freedom, with
 * l(p) the beta-binomial log likelihood at its best correlation for that p.
 *
 * @param input.dishes  successes and trials of every replicate, integers
 * @param input.level   probability in (0, 1), default 0.95
 * @returns bounds and estimates, relative error below 1e-8; or a refusal: one replicate, nothing germinated or all did
 *          (then no dish shows how uneven they can be), dishes of a single seed, or one of more than 2000
 * @throws RangeError when a count is not an integer in its range or the level outside (0, 1)
 * @see Skellam (1948), J. R. Stat. Soc. B 10:257-261, for the distribution (from memory); that the interval is a profile
 *      likelihood with the plain chi-square limit is our own choice: docs/methods/germination-interval.md
 * Checked against R (`optimize`, `uniroot` on `lbeta`): tests/golden/uneven-dishes-interval.json
 */
export function unevenDishesInterval({
  dishes,
  level = 0.95,
}: {
  dishes: readonly DishCount[];
  level?: number;
}): UnevenDishesInterval {
  requireDishes('unevenDishesInterval', dishes, level);
  if (dishes.length < 2) return { ok: false, reason: 'one-replicate' };
  const trials = dishes.reduce((sum, dish) => sum + dish.trials, 0);
  const successes = dishes.reduce((sum, dish) => sum + dish.successes, 0);
  if (successes === 0 || successes === trials) return { ok: false, reason: 'nothing-differs' };
  if (trials === dishes.length) return { ok: false, reason: 'one-seed-a-dish' };
  if (dishes.some((dish) => dish.trials > MOST_SEEDS_A_DISH)) return { ok: false, reason: 'too-many-seeds' };

  const { best, at } = unevenDishesProfile(dishes);
  const z = normalQuantile((1 - level) / 2);
  const excess = (logOdds: number) => 2 * (best.logLikelihood - at(logOdds).logLikelihood) - z * z;
  const boundTowards = (direction: 1 | -1) => {
    let step = direction / 4;
    while (excess(best.logOdds + step) < 0) step *= 2;
    return inverseLogOdds(rootBetween(excess, best.logOdds, best.logOdds + step, LOG_ODDS_TOLERANCE));
  };
  return {
    ok: true,
    lower: boundTowards(-1),
    upper: boundTowards(1),
    level,
    mean: inverseLogOdds(best.logOdds),
    correlation: best.correlation,
  };
}

/**
 * Wilson's interval when the intra-replicate correlation is known: a dish of n seeds says as much as n / (1 + (n - 1) rho)
 * independent ones.
 *
 * @param input.dishes       successes and trials of every replicate, integers; one is enough
 * @param input.correlation  rho, 0-1; at 0 this is the plain Wilson interval, however the seeds are split into dishes
 * @param input.level        probability in (0, 1), default 0.95
 * @returns bounds as proportions; with no success the lower is 0, with nothing else the upper is 1
 * @throws RangeError when there is no dish, a count is not an integer in its range, or correlation or level are outside
 *         theirs
 * @see the variance n p (1 - p) (1 + (n - 1) rho): Kish (1965), Survey Sampling, design effect (from memory)
 * Checked in tests/domain/statistics/uneven-dishes-interval.test.ts, against R at effective numbers of seeds
 */
export function wilsonForAlikeSeeds({
  dishes,
  correlation,
  level = 0.95,
}: {
  dishes: readonly DishCount[];
  correlation: number;
  level?: number;
}): Interval {
  requireDishes('wilsonForAlikeSeeds', dishes, level);
  requireProportion('wilsonForAlikeSeeds', 'correlation', correlation);
  const trials = dishes.reduce((sum, dish) => sum + dish.trials, 0);
  const successes = dishes.reduce((sum, dish) => sum + dish.successes, 0);
  const inflated = dishes.reduce((sum, dish) => sum + dish.trials * (1 + (dish.trials - 1) * correlation), 0);
  const share = trials / inflated;
  const [lower, upper] = wilsonBounds(successes * share, (trials - successes) * share, (1 - level) / 2);
  return { lower: successes === 0 ? 0 : lower, upper: successes === trials ? 1 : upper, level, method: 'wilson' };
}

function requireDishes(functionName: string, dishes: readonly DishCount[], level: number): void {
  if (dishes.length === 0) throw new RangeError(`${functionName}: dishes must hold at least one, got none`);
  for (const { successes, trials } of dishes) {
    requireCounts(functionName, successes, trials);
    if (trials < 1) throw new RangeError(`${functionName}: trials must be at least 1, got ${trials}`);
  }
  requireProportion(functionName, 'level', level, true);
}
