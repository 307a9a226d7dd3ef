/**
 * The one model under a storage experiment, fitted by maximum likelihood: probit K of each lot, less days in store times
 * a rate whose logarithm is linear in the condition. With one lot and one column it is ordinary probit regression.
 *
 * Newton's method with step-halving on analytic derivatives, from several starting points, because the rate enters by its
 * logarithm and the likelihood need not have one top only. Where the observed curvature is not that of a top, the
 * expected one takes its place for the step.
 */
import { choleskyFactor, choleskyInverse, choleskySolve } from '../../statistics/cholesky';
import { normalQuantile } from '../../statistics/normal-distribution';
import { type DeclinePoint, type DeclineState, derivativesAt, logLikelihood, probitsLost } from './decline-likelihood';
import { newCoefficients, oldCoefficients, orthogonalColumns } from './orthogonal-columns';

export interface DeclineFit {
  ok: true;
  /** K of each lot, probits */
  initialProbits: number[];
  /** coefficients of the natural logarithm of the rate, as the columns were given */
  coefficients: number[];
  /** of the lots, then the coefficients: inverse of the expected information, not inflated */
  covariance: number[][];
  logLikelihood: number;
  /** counts left free: rows with seed less what was fitted */
  degreesOfFreedom: number;
}

export interface DeclineRefusal {
  ok: false;
  reason: 'confounded' | 'no-decline' | 'separation' | 'did-not-converge';
  /** for 'no-decline': indexes of points stored for some time whose seed lost nothing measurable */
  withoutDecline: number[];
}

const MAX_ITERATIONS = 300;
const MAX_STEP_HALVINGS = 60;
/** Longest step in a coefficient of the logarithm of the rate: a factor of 20 at once is far enough. */
const LONGEST_STEP = 3;
/** Squared length of a step in standard errors. Below this, full steps converge quadratically and need no guard. */
const NEAR_DECREMENT = 1e-8;
const CONVERGED_DECREMENT = 1e-18;
/** Steps that stay below a millionth of a standard error without shrinking are rounding error, not a way still to go. */
const ROUNDING_DECREMENT = 1e-12;
/**
 * A standard error beyond this, in probits or in the logarithm of the rate, says that the top lies at infinity: honest
 * data near separation give about 1, runaway ones 1e5 and more.
 */
const LARGEST_STANDARD_ERROR = 1e3;
/** Probits lost over the whole storage; less than this is nothing. */
const NOTHING_LOST = 1e-3;

/**
 * Fits the decline of seed in store.
 *
 * @param points  counts with seed; each lot must have at least one seed that germinated and one that did not
 * @param lots    how many lots there are
 * @param starts  coefficients to start from, as the columns are given; at least one
 * @returns the fit with the greatest likelihood, or a refusal:
 *   'confounded'       a column repeats others, or the counts cannot tell lots and rates apart;
 *   'no-decline'       the likelihood keeps growing as the rate of some condition goes to nothing;
 *   'separation'       the counts part living from dead so sharply that some estimate is infinite;
 *   'did-not-converge' the arithmetic gave out before the answer was reached
 * @throws RangeError when there is no starting point
 * Checked against R (glm and an own search): tests/domain/longevity/storage-experiment/decline-model.test.ts
 */
export function fitDecline(
  points: readonly DeclinePoint[],
  lots: number,
  starts: readonly (readonly number[])[],
): DeclineFit | DeclineRefusal {
  if (starts.length === 0) throw new RangeError('fitDecline: starts must hold at least one starting point');
  const stored = points.filter((point) => point.days > 0);
  const basis = orthogonalColumns(stored.map((point) => point.columns));
  if ('repeats' in basis) return refuse('confounded');
  let next = 0;
  const inBasis = points.map((point) =>
    point.days > 0 ? { ...point, columns: basis.rows[next++] as number[] } : point,
  );

  const tops = starts.map((start) => climb(inBasis, lots, newCoefficients(basis.triangle, start)));
  const reached = tops.filter((top) => top.converged);
  const [best] = (reached.length > 0 ? reached : tops).sort((a, b) => b.logLikelihood - a.logLikelihood);
  const top = best as Top;

  const covariance = choleskyInverse(derivativesAt(inBasis, top.state).expected);
  const isRunaway =
    !covariance || covariance.some((row, i) => !(Math.sqrt(row[i] as number) <= LARGEST_STANDARD_ERROR));
  if (isRunaway) return explainRunaway(inBasis, top, basis.rows);
  if (!top.converged) return refuse('did-not-converge');
  return {
    ok: true,
    initialProbits: top.state.initialProbits,
    coefficients: oldCoefficients(basis.triangle, top.state.coefficients),
    covariance: covarianceOfOld(covariance as number[][], lots, basis.triangle),
    logLikelihood: top.logLikelihood,
    degreesOfFreedom: points.length - lots - top.state.coefficients.length,
  };
}

interface Top {
  state: DeclineState;
  logLikelihood: number;
  converged: boolean;
}

function climb(points: readonly DeclinePoint[], lots: number, start: readonly number[]): Top {
  let state: DeclineState = { initialProbits: firstProbits(points, lots, start), coefficients: [...start] };
  let previousDecrement = Number.POSITIVE_INFINITY;
  const end = (converged: boolean): Top => ({ state, logLikelihood: logLikelihood(points, state), converged });
  for (let iteration = 0; iteration < MAX_ITERATIONS; iteration++) {
    const { score, observed, expected } = derivativesAt(points, state);
    const factor = choleskyFactor(observed) ?? choleskyFactor(expected);
    if (!factor) return end(false);
    const step = choleskySolve(factor, score);
    const decrement = step.reduce((sum, value, j) => sum + value * (score[j] as number), 0);
    if (!Number.isFinite(decrement)) return end(false);
    const atRoundingLimit = decrement < ROUNDING_DECREMENT && decrement >= previousDecrement;
    if (decrement <= CONVERGED_DECREMENT || atRoundingLimit) {
      state = add(state, step, 1);
      return end(true);
    }
    previousDecrement = decrement;
    // Near the top the gain in likelihood drowns in rounding, while the score still points rightly.
    const better = decrement < NEAR_DECREMENT ? add(state, step, 1) : halvedUntilBetter(points, state, step);
    if (!better) return end(false);
    state = better;
  }
  return end(false);
}

function halvedUntilBetter(points: readonly DeclinePoint[], state: DeclineState, step: number[]): DeclineState | null {
  const likelihood = logLikelihood(points, state);
  const longest = Math.max(...step.slice(state.initialProbits.length).map(Math.abs));
  let fraction = Math.min(1, LONGEST_STEP / longest);
  for (let halving = 0; halving < MAX_STEP_HALVINGS; halving++) {
    const next = add(state, step, fraction);
    if (logLikelihood(points, next) > likelihood) return next;
    fraction /= 2;
  }
  return null;
}

function add({ initialProbits, coefficients }: DeclineState, step: readonly number[], fraction: number): DeclineState {
  const at = (j: number) => fraction * (step[j] as number);
  return {
    initialProbits: initialProbits.map((value, j) => value + at(j)),
    coefficients: coefficients.map((value, j) => value + at(initialProbits.length + j)),
  };
}

/** Each lot's K, roughly: the mean over its counts of the probit seen, with what the start says was lost put back. */
function firstProbits(points: readonly DeclinePoint[], lots: number, start: readonly number[]): number[] {
  return Array.from({ length: lots }, (_, lot) => {
    let [sum, weight] = [0, 0];
    for (const point of points) {
      if (point.lot !== lot) continue;
      const share = (point.germinated + 0.5) / (point.sown + 1);
      const lost = probitsLost(point, start);
      // Counts at the end, when all are dead, say little of how the lot began.
      const trust = (point.sown * share * (1 - share)) / (1 + lost * lost);
      sum += trust * (normalQuantile(share) + Math.min(lost, MOST_PUT_BACK));
      weight += trust;
    }
    return sum / weight;
  });
}

/** Probits; a lot that begins above 3 has one seed in a thousand dead. */
const MOST_PUT_BACK = 5;

function covarianceOfOld(covariance: number[][], lots: number, triangle: readonly (readonly number[])[]): number[][] {
  // cov(old) = R^-1 cov(new) R^-T for the coefficients; lots stay as they are.
  const back = (row: readonly number[]) => [...row.slice(0, lots), ...oldCoefficients(triangle, row.slice(lots))];
  const half = covariance.map(back);
  const turned = half.map((_, j) => half.map((row) => row[j] as number));
  return turned.map(back);
}

function refuse(reason: DeclineRefusal['reason'], withoutDecline: number[] = []): DeclineRefusal {
  return { ok: false, reason, withoutDecline };
}

function explainRunaway(points: readonly DeclinePoint[], top: Top, columns: readonly number[][]): DeclineRefusal {
  const withoutDecline = points.flatMap((point, index) =>
    point.days > 0 && probitsLost(point, top.state.coefficients) < NOTHING_LOST ? [index] : [],
  );
  if (withoutDecline.length > 0) return refuse('no-decline', withoutDecline);
  return refuse(cannotBeTold(points, columns[0]?.length ?? 0) ? 'confounded' : 'separation');
}

/** Whether the counts, were they any, could not tell lots and rates apart: fewer independent gradients than unknowns. */
function cannotBeTold(points: readonly DeclinePoint[], coefficients: number): boolean {
  const lots = Math.max(...points.map((point) => point.lot)) + 1;
  const longest = Math.max(...points.map((point) => point.days));
  const gradients = points.map((point) => {
    const lost = (point.days / longest) * Math.exp(0.5 * (point.columns[1] ?? 0));
    const inLot = Array.from({ length: lots }, (_, lot) => (lot === point.lot ? 1 : 0));
    return [...inLot, ...Array.from({ length: coefficients }, (_, j) => lost * (point.columns[j] ?? 0))];
  });
  return 'repeats' in orthogonalColumns(gradients);
}
