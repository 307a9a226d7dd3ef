/*
 * Log-likelihood of a fitted germination curve, with its first and second derivatives.
 *
 * F(day) = limit * H((log day - logMiddle) / spread). A germinated seed contributes log of F(toDay) - F(fromDay), a seed
 * that had not germinated log of 1 - F(fromDay). The three coordinates are logMiddle, logSpread and logitLimit, which
 * may take any value, so that no step can leave what is possible. With the limit held (at 1 or elsewhere) the first two
 * remain.
 */
import { inverseLogOdds } from '../../statistics/log-odds';
import { type CurveShape, STANDARD_DISTRIBUTIONS, type StandardDistribution } from './curve-shapes';
import type { SeedInterval } from './dish-counts';

export interface CurveCoordinates {
  logMiddle: number;
  logSpread: number;
  /** share of all seeds able to germinate, (0, 1] */
  limit: number;
  /** log(limit / (1 - limit)), kept beside the limit because near 1 it has digits that the limit has lost */
  logitLimit: number;
}

export interface LikelihoodAt {
  value: number;
  /** by logMiddle, logSpread, and logitLimit unless it is held */
  slope: number[];
  curvature: number[][];
}

/**
 * Log-likelihood alone: what a step is judged by.
 *
 * @param shape      see CurveShape
 * @param intervals  from seedIntervals
 * @param at         see CurveCoordinates
 * @returns the sum over seeds; -Infinity where a seed is impossible to working accuracy
 * Checked against R: tests/golden/germination-time-course.json
 */
export function curveLogLikelihood(
  shape: CurveShape,
  intervals: readonly SeedInterval[],
  at: CurveCoordinates,
): number {
  const distribution = STANDARD_DISTRIBUTIONS[shape];
  return intervals.reduce((sum, interval) => {
    const { fromZ, toZ } = standardised(interval, at);
    const chance =
      toZ === Number.POSITIVE_INFINITY
        ? notGerminated(distribution, fromZ, at)
        : at.limit * chanceBetween(distribution, fromZ, toZ);
    return sum + interval.seeds * Math.log(chance);
  }, 0);
}

/**
 * Log-likelihood with its derivatives.
 *
 * @param shape      see CurveShape
 * @param intervals  from seedIntervals
 * @param at         see CurveCoordinates
 * @param isLimitFree  whether the limit is a coordinate
 * @returns value, slope and curvature (2 or 3 coordinates)
 * Checked through the fit against R's symbolic derivatives: tests/golden/germination-time-course.json
 */
export function curveLikelihoodAt(
  shape: CurveShape,
  intervals: readonly SeedInterval[],
  at: CurveCoordinates,
  isLimitFree: boolean,
): LikelihoodAt {
  const distribution = STANDARD_DISTRIBUTIONS[shape];
  const size = isLimitFree ? 3 : 2;
  const slope = new Array<number>(size).fill(0);
  const curvature = slope.map(() => new Array<number>(size).fill(0));
  const spread = Math.exp(at.logSpread);
  const unable = inverseLogOdds(-at.logitLimit);
  for (const interval of intervals) {
    const { fromZ, toZ } = standardised(interval, at);
    const from = derivativesOfShare(distribution, fromZ, spread);
    const to = derivativesOfShare(distribution, toZ, spread);
    const isUngerminated = toZ === Number.POSITIVE_INFINITY;
    const between = isUngerminated ? distribution.upperTail(fromZ) : chanceBetween(distribution, fromZ, toZ);
    const chance = isUngerminated ? notGerminated(distribution, fromZ, at) : at.limit * between;
    // The chance is limit * between, plus (1 - limit) for the ungerminated; d limit / d logitLimit = limit * unable.
    const first = [0, 1].map((i) => at.limit * ((to.first[i] ?? 0) - (from.first[i] ?? 0)));
    const second = [0, 1, 2].map((i) => at.limit * ((to.second[i] ?? 0) - (from.second[i] ?? 0)));
    const byLimit = at.limit * unable * (isUngerminated ? -distribution.cdf(fromZ) : between);
    const chanceSlope = [...first, byLimit];
    const chanceCurvature = [
      [second[0] ?? 0, second[1] ?? 0, (first[0] ?? 0) * unable],
      [second[1] ?? 0, second[2] ?? 0, (first[1] ?? 0) * unable],
      [(first[0] ?? 0) * unable, (first[1] ?? 0) * unable, byLimit * (unable - at.limit)],
    ];
    for (let r = 0; r < size; r++) {
      const relative = (chanceSlope[r] ?? 0) / chance;
      slope[r] = (slope[r] ?? 0) + interval.seeds * relative;
      const row = curvature[r] ?? [];
      for (let c = 0; c < size; c++) {
        const bend = (chanceCurvature[r]?.[c] ?? 0) / chance - relative * ((chanceSlope[c] ?? 0) / chance);
        row[c] = (row[c] ?? 0) + interval.seeds * bend;
      }
    }
  }
  return { value: curveLogLikelihood(shape, intervals, at), slope, curvature };
}

function standardised({ fromDay, toDay }: SeedInterval, { logMiddle, logSpread }: CurveCoordinates) {
  const spread = Math.exp(logSpread);
  return { fromZ: (Math.log(fromDay) - logMiddle) / spread, toZ: (Math.log(toDay) - logMiddle) / spread };
}

function chanceBetween({ cdf, upperTail }: StandardDistribution, fromZ: number, toZ: number): number {
  return fromZ > 0 ? upperTail(fromZ) - upperTail(toZ) : cdf(toZ) - cdf(fromZ);
}

function notGerminated({ upperTail }: StandardDistribution, fromZ: number, { limit, logitLimit }: CurveCoordinates) {
  return inverseLogOdds(-logitLimit) + limit * upperTail(fromZ);
}

/** Of H(z): first derivatives by logMiddle and logSpread; second by both twice and mixed. All 0 at day 0 and Infinity. */
function derivativesOfShare({ density, densitySlope }: StandardDistribution, z: number, spread: number) {
  if (!Number.isFinite(z)) return { first: [0, 0], second: [0, 0, 0] };
  const height = density(z);
  const steepness = densitySlope(z);
  return {
    first: [-height / spread, -height * z],
    second: [steepness / spread ** 2, (steepness * z + height) / spread, steepness * z * z + height * z],
  };
}
