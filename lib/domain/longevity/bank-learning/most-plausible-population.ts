/**
 * The belief about a crop's lots that its tests and the published figures make most plausible together: the highest
 * point of the log marginal likelihood (population-likelihood.ts) plus what the published figures add
 * (published-as-lots.ts).
 *
 * Two steps of the EM algorithm, then Newton's method on (mean, log sd) of both figures, the curvature taken from
 * differences of exact slopes.
 */
import { choleskyInverse } from '../../statistics/cholesky';
import type { LotPrior } from '../lot-model';
import { LEAST_SPREAD } from './lattice';
import type { LotEvidence } from './lot-evidence';
import { type PopulationFit, populationFit } from './population-likelihood';
import { meanAndSpreadTogether, PUBLISHED_COUNTS_AS_LOTS, publishedAsLots } from './published-as-lots';

/** Mean and log sd of K, mean and log sd of the log rate. */
type Point = readonly [number, number, number, number];

export type MostPlausiblePopulation =
  | {
      ok: true;
      population: LotPrior;
      /** covariance of (mean of K, log sd of K, mean of log rate, log sd of log rate); 0 for what was held fixed */
      covariance: number[][];
      /** log marginal likelihood plus what the published figures add (0 at the published figures) */
      logPosterior: number;
      logLikelihood: number;
    }
  | { ok: false; reason: 'did-not-converge' };

// Wider than any crop: what comes near is for the caller to refuse (learn-crop-prior.ts).
const MOST_INITIAL_SPREAD = 4;
const MOST_RATE_SPREAD = 2.5;
const LOWEST: Point = [-3, Math.log(LEAST_SPREAD), -3, Math.log(LEAST_SPREAD)];
const HIGHEST: Point = [4, Math.log(MOST_INITIAL_SPREAD), 3, Math.log(MOST_RATE_SPREAD)];
const EM_STEPS = 2;
const MOST_NEWTON_STEPS = 60;
const SLOPE_TOLERANCE = 1e-6; // per standard error: the answer is then right to a millionth of its own uncertainty
const DIFFERENCE = 1e-3;
const LONGEST_STEP = 0.7;

/**
 * @param evidence           of each lot, from `lotEvidence`; none too
 * @param published          what is believed without the bank's tests: means -3 to 4 and -3 to 3, sd 0.15 to 4 and 2.5
 * @param publishedCountsAs  lots, > 0; default 3
 * @param learnRate          false holds the rate's mean and spread at the published ones; default true
 * @returns the most plausible belief and how sure it is, or that no maximum was reached
 * @throws RangeError when `published` or `publishedCountsAs` is outside its range
 * @see docs/methods/bank-learning.md
 * Checked against R's dense grid and optim: tests/domain/longevity/bank-learning/most-plausible-population.test.ts
 */
export function mostPlausiblePopulation({
  evidence,
  published,
  publishedCountsAs = PUBLISHED_COUNTS_AS_LOTS,
  learnRate = true,
}: {
  evidence: readonly LotEvidence[];
  published: LotPrior;
  publishedCountsAs?: number;
  learnRate?: boolean;
}): MostPlausiblePopulation {
  if (!(publishedCountsAs > 0 && Number.isFinite(publishedCountsAs))) {
    throw new RangeError(`mostPlausiblePopulation: publishedCountsAs must be above 0, got ${publishedCountsAs}`);
  }
  const origin = pointOf(published);
  origin.forEach((value, index) => {
    if (!(value >= (LOWEST[index] as number) - 1e-9 && value <= (HIGHEST[index] as number) + 1e-9)) {
      throw new RangeError(`mostPlausiblePopulation: published is out of range, got ${JSON.stringify(published)}`);
    }
  });
  const learnt = learnRate ? [0, 1, 2, 3] : [0, 1];
  const objective = objectiveOf(evidence, published, publishedCountsAs);
  let here = objective(origin);
  for (let step = 0; step < EM_STEPS; step += 1) {
    const next = objective(emStep(here, published, evidence.length, publishedCountsAs, learnRate));
    if (!(next.height > here.height)) break;
    here = next;
  }
  for (let step = 0; step < MOST_NEWTON_STEPS; step += 1) {
    // What stands at the end of its range and would go farther is held there.
    const free = learnt.filter((index) => !isHeld(here.point, here.slope, index));
    const curvature = curvatureAt(objective, here.point, free);
    const covariance = choleskyInverse(curvature);
    const errors = covariance?.map((row, index) => Math.sqrt(Math.max(0, row[index] as number)));
    const slope = free.map((index) => here.slope[index] as number);
    if (covariance && errors && slope.every((value, k) => Math.abs(value * (errors[k] as number)) < SLOPE_TOLERANCE)) {
      return {
        ok: true,
        population: populationOf(here.point),
        covariance: spreadOut(covariance, free),
        logPosterior: here.height,
        logLikelihood: here.fit.logLikelihood,
      };
    }
    const direction = covariance
      ? covariance.map((row) => row.reduce((sum, value, k) => sum + value * (slope[k] as number), 0))
      : slope.map((value) => value / (publishedCountsAs + evidence.length));
    const next = lineSearch(objective, here, direction, free);
    if (!next) return { ok: false, reason: 'did-not-converge' };
    here = next;
  }
  return { ok: false, reason: 'did-not-converge' };
}

interface Evaluated {
  point: Point;
  height: number;
  slope: Point;
  fit: PopulationFit;
}

type Objective = (point: Point) => Evaluated;

/** Log marginal likelihood and what the published figures add, with the slopes of both. */
function objectiveOf(evidence: readonly LotEvidence[], published: LotPrior, weight: number): Objective {
  return (point) => {
    const fit = populationFit(evidence, populationOf(point));
    const [initialMean, initialLogSd, rateMean, rateLogSd] = point;
    const initial = publishedAsLots({ mean: initialMean, logSd: initialLogSd }, published.initial, weight);
    const rate = publishedAsLots({ mean: rateMean, logSd: rateLogSd }, published.logRate, weight);
    return {
      point,
      fit,
      height: fit.logLikelihood + initial.height + rate.height,
      slope: [
        fit.initialZ / Math.exp(initialLogSd) + initial.byMean,
        fit.initialSquare - evidence.length + initial.byLogSd,
        fit.rateZ / Math.exp(rateLogSd) + rate.byMean,
        fit.rateSquare - evidence.length + rate.byLogSd,
      ],
    };
  };
}

function emStep(
  { point, fit }: Evaluated,
  published: LotPrior,
  lots: number,
  weight: number,
  learnRate: boolean,
): Point {
  const [initialMean, initialLogSd, rateMean, rateLogSd] = point;
  const initial = meanAndSpreadTogether({ mean: initialMean, logSd: initialLogSd }, published.initial, weight, {
    lots,
    z: fit.initialZ,
    square: fit.initialSquare,
  });
  const rate = meanAndSpreadTogether({ mean: rateMean, logSd: rateLogSd }, published.logRate, weight, {
    lots,
    z: fit.rateZ,
    square: fit.rateSquare,
  });
  return inRange([initial.mean, initial.logSd, ...(learnRate ? [rate.mean, rate.logSd] : [rateMean, rateLogSd])]);
}

function isHeld(point: Point, slope: Point, index: number): boolean {
  const [value, rise] = [point[index] as number, slope[index] as number];
  return (value <= (LOWEST[index] as number) && rise < 0) || (value >= (HIGHEST[index] as number) && rise > 0);
}

/** Minus the second derivatives along the free coordinates. */
function curvatureAt(objective: Objective, point: Point, free: readonly number[]): number[][] {
  const columns = free.map((index) => {
    const [up, down] = [1, -1].map((sign) => {
      const moved = [...point] as [number, number, number, number];
      moved[index] = (moved[index] as number) + sign * DIFFERENCE;
      return objective(moved).slope;
    }) as [Point, Point];
    return free.map((other) => ((down[other] as number) - (up[other] as number)) / (2 * DIFFERENCE));
  });
  return columns.map((column, i) => column.map((value, j) => 0.5 * (value + ((columns[j] as number[])[i] as number))));
}

function lineSearch(objective: Objective, here: Evaluated, direction: number[], free: number[]): Evaluated | null {
  const longest = Math.max(...direction.map(Math.abs));
  let share = Math.min(1, LONGEST_STEP / longest);
  for (let halving = 0; halving < 40; halving += 1) {
    const moved = [...here.point] as number[];
    free.forEach((index, k) => {
      moved[index] = (moved[index] as number) + share * (direction[k] as number);
    });
    const next = objective(inRange(moved));
    if (next.height > here.height - 1e-10 * Math.abs(here.height)) return next;
    share *= 0.5;
  }
  return null;
}

function spreadOut(covariance: number[][], free: readonly number[]): number[][] {
  const whole = Array.from({ length: 4 }, () => [0, 0, 0, 0]);
  free.forEach((row, i) => {
    free.forEach((column, j) => {
      (whole[row] as number[])[column] = (covariance[i] as number[])[j] as number;
    });
  });
  return whole;
}

const inRange = (point: readonly number[]): Point =>
  point.map((value, index) =>
    Math.min(HIGHEST[index] as number, Math.max(LOWEST[index] as number, value)),
  ) as unknown as Point;

const pointOf = ({ initial, logRate }: LotPrior): Point => [
  initial.mean,
  Math.log(initial.sd),
  logRate.mean,
  Math.log(logRate.sd),
];

const populationOf = ([initialMean, initialLogSd, rateMean, rateLogSd]: Point): LotPrior => ({
  initial: { mean: initialMean, sd: Math.exp(initialLogSd) },
  logRate: { mean: rateMean, sd: Math.exp(rateLogSd) },
});
