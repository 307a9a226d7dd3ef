/**
 * The likelihood under a storage experiment: seed of lot i has the probit eta = K_i - days * r, and the logarithm of the
 * rate r (probits lost in a day) is linear in the condition's columns. Counts are binomial.
 */
import { normalLogCdf, normalLogDensity } from '../../statistics/normal-distribution';

/** A count as the fit sees it. */
export interface DeclinePoint {
  /** index of the lot */
  lot: number;
  days: number;
  sown: number;
  germinated: number;
  /** known part of the natural logarithm of the rate */
  offset: number;
  /** columns that the coefficients multiply; without effect at day 0 */
  columns: readonly number[];
}

export interface DeclineState {
  /** K of each lot, probits */
  initialProbits: number[];
  /** coefficients of the natural logarithm of the rate */
  coefficients: number[];
}

/**
 * Natural logarithm of the probits that a point's seed loses in a day.
 *
 * @param point         a count
 * @param coefficients  as many as the point has columns
 * @returns any real number; the rate is in probits a day
 * Checked through fitDecline against R: tests/domain/longevity/storage-experiment/decline-model.test.ts
 */
export function logRate(point: DeclinePoint, coefficients: readonly number[]): number {
  return point.columns.reduce((sum, value, j) => sum + value * (coefficients[j] as number), point.offset);
}

/**
 * Probits lost up to the count.
 *
 * @param point         a count
 * @param coefficients  as many as the point has columns
 * @returns probits, >= 0; 0 at day 0
 * Checked through fitDecline against R: tests/domain/longevity/storage-experiment/decline-model.test.ts
 */
export function probitsLost(point: DeclinePoint, coefficients: readonly number[]): number {
  return point.days === 0 ? 0 : point.days * Math.exp(logRate(point, coefficients));
}

/**
 * Binomial log-likelihood of all counts, without its constant.
 *
 * @param points  the counts
 * @param state   each lot's K and the coefficients
 * @returns a number <= 0
 * Checked through fitDecline against R: tests/domain/longevity/storage-experiment/decline-model.test.ts
 */
export function logLikelihood(points: readonly DeclinePoint[], state: DeclineState): number {
  let sum = 0;
  for (const point of points) {
    const probit = (state.initialProbits[point.lot] as number) - probitsLost(point, state.coefficients);
    const dead = point.sown - point.germinated;
    if (point.germinated > 0) sum += point.germinated * normalLogCdf(probit);
    if (dead > 0) sum += dead * normalLogCdf(-probit);
  }
  return sum;
}

export interface Derivatives {
  /** lots first, then coefficients */
  score: number[];
  /** minus the second derivatives */
  observed: number[][];
  /** their expectation: Jᵀ W J */
  expected: number[][];
}

/**
 * First derivatives of the log-likelihood and its curvature, as observed (to climb by) and as expected (to report).
 *
 * @param points  the counts
 * @param state   each lot's K and the coefficients
 * @returns lots first, then coefficients
 * Checked through fitDecline against R: tests/domain/longevity/storage-experiment/decline-model.test.ts
 */
export function derivativesAt(points: readonly DeclinePoint[], state: DeclineState): Derivatives {
  const lots = state.initialProbits.length;
  const size = lots + state.coefficients.length;
  const square = () => Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const score = new Array<number>(size).fill(0);
  const [observed, expected] = [square(), square()];
  for (const point of points) {
    const lost = probitsLost(point, state.coefficients);
    const probit = (state.initialProbits[point.lot] as number) - lost;
    const dead = point.sown - point.germinated;
    const logDensity = normalLogDensity(probit);
    // density / P and density / (1 - P), through logarithms because both parts underflow together far out.
    const perSuccess = Math.exp(logDensity - normalLogCdf(probit));
    const perFailure = Math.exp(logDensity - normalLogCdf(-probit));
    const residual = point.germinated * perSuccess - dead * perFailure;
    const weight = point.sown * perSuccess * perFailure;
    const curvature = point.germinated * perSuccess * (perSuccess + probit) + dead * perFailure * (perFailure - probit);
    const gradient = gradientOf(point, lost);
    for (const [j, value] of gradient) {
      score[j] = (score[j] as number) + residual * value;
      for (const [k, other] of gradient) {
        if (k > j) continue;
        // The rate enters by its logarithm, so eta is bent in the coefficients: d2 eta = gradient * column.
        const bend = k >= lots ? residual * value * (point.columns[k - lots] as number) : 0;
        add(observed, j, k, curvature * value * other - bend);
        add(expected, j, k, weight * value * other);
      }
    }
  }
  return { score, observed, expected };

  function gradientOf(point: DeclinePoint, lost: number): [number, number][] {
    const inLot: [number, number][] = [[point.lot, 1]];
    return lost === 0 ? inLot : [...inLot, ...point.columns.map((z, j): [number, number] => [lots + j, -lost * z])];
  }

  function add(matrix: number[][], j: number, k: number, value: number): void {
    const sum = (matrix[j]?.[k] as number) + value;
    (matrix[j] as number[])[k] = sum;
    (matrix[k] as number[])[j] = sum;
  }
}
