/*
 * The beta-binomial likelihood of the dishes of a test as a function of the mean alone: for each mean the unevenness that
 * suits it best. Means are given as log odds, on which both ends have room.
 */
import { highestBetween } from './golden-section';
import { inverseLogOdds } from './log-odds';
import { type DishCount, unevenDishesLikelihood } from './uneven-dishes-likelihood';

/** Where to look for the best correlation before refining: from none to all-or-nothing dishes. */
const CORRELATIONS = [
  0, 1e-5, 1e-4, 3e-4, 1e-3, 2e-3, 4e-3, 8e-3, 0.015, 0.03, 0.05, 0.08, 0.12, 0.2, 0.3, 0.45, 0.6, 0.8, 0.95, 0.999, 1,
];
/** Both leave the log likelihood known to about 1e-12, because it is flat at its peak. */
const CORRELATION_STEPS = 34;
const MEAN_STEPS = 40;
/** A proportion of 0 or 1 in a single dish, as log odds: far outside any mean that could explain the others too. */
const EXTREME_LOG_ODDS = 12;

export interface ProfilePoint {
  /** log p / (1 - p) of the mean */
  logOdds: number;
  /** the correlation that suits this mean best, 0-1 */
  correlation: number;
  /** without its constant */
  logLikelihood: number;
}

/**
 * @param dishes  successes and trials; some seed must have germinated and some not
 * @returns the point that explains the dishes best, and the best point at any mean
 * @throws nothing; the caller has checked the counts
 * Checked through `unevenDishesInterval` against R: tests/golden/uneven-dishes-interval.json
 */
export function unevenDishesProfile(dishes: readonly DishCount[]): {
  best: ProfilePoint;
  at: (logOdds: number) => ProfilePoint;
} {
  const likelihood = unevenDishesLikelihood(dishes);
  const at = (logOdds: number): ProfilePoint => {
    const [mean, complement] = [inverseLogOdds(logOdds), inverseLogOdds(-logOdds)];
    const found = highestOverCorrelations((correlation) => likelihood(mean, complement, correlation));
    return { logOdds, correlation: found.x, logLikelihood: found.height };
  };
  const [lowest, highest] = rangeOfLogOdds(dishes);
  const best = highestBetween((logOdds) => at(logOdds).logLikelihood, lowest, highest, MEAN_STEPS);
  return { best: at(best.x), at };
}

function highestOverCorrelations(height: (correlation: number) => number): { x: number; height: number } {
  const heights = CORRELATIONS.map(height);
  const peak = heights.indexOf(Math.max(...heights));
  const from = CORRELATIONS[Math.max(0, peak - 1)] as number;
  const to = CORRELATIONS[Math.min(CORRELATIONS.length - 1, peak + 1)] as number;
  const found = highestBetween(height, from, to, CORRELATION_STEPS);
  const atPeak = heights[peak] as number;
  return found.height > atPeak ? found : { x: CORRELATIONS[peak] as number, height: atPeak };
}

/** The best mean lies between the lowest and the highest dish. */
function rangeOfLogOdds(dishes: readonly DishCount[]): [number, number] {
  const logOdds = dishes.map(({ successes, trials }) =>
    Math.max(-EXTREME_LOG_ODDS, Math.min(EXTREME_LOG_ODDS, Math.log(successes) - Math.log(trials - successes))),
  );
  const [lowest, highest] = [Math.min(...logOdds), Math.max(...logOdds)];
  // Dishes that agree to the last seed leave a bracket of no width.
  return [lowest - 1e-3, highest + 1e-3];
}
