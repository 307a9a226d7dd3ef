/*
 * Probit regression of counts on one variable, by maximum likelihood: Phi^-1(P) = intercept + slope x.
 *
 * For seed it is the survival curve: x is the time in store (or the ageing in probits), the intercept the initial
 * viability in probits, minus one over the slope the time in which one probit is lost. Assumes that all seeds of a
 * point are independent and alike and that the curve is a straight line in probits.
 *
 * Fitted by Newton's method with step-halving on a centred and scaled x, so that a time in days does not spoil the
 * arithmetic. (The log-likelihood is concave. Fisher scoring uses the expected curvature, climbs slowly and can circle
 * the top where points fit badly; it is kept for the covariance, which it defines.) The tails enter through
 * logarithms, so a point ten probits from the middle is still counted.
 */
import { choleskyFactor, choleskyInverse, choleskySolve } from './cholesky';
import { normalLogCdf, normalLogDensity, normalQuantile } from './normal-distribution';
import {
  type ProbitData,
  type ProbitPoint,
  type ProbitRefusal,
  readProbitPoints,
  refuse,
  refuseUnfittable,
} from './probit-data';

export interface ProbitFit {
  ok: true;
  /** probits at x = 0 */
  intercept: number;
  /** probits per unit of x */
  slope: number;
  /** [[var(intercept), cov], [cov, var(slope)]]: inverse of the expected information, not inflated for dispersion */
  covariance: [[number, number], [number, number]];
  /** twice the log-likelihood lost against a curve through every point; >= 0 */
  deviance: number;
  /** >= 0; Infinity where a seed lies so far off the curve that the figure passes the largest double */
  pearsonChiSquare: number;
  /** points with at least one trial, less the 2 coefficients */
  degreesOfFreedom: number;
}

interface Line {
  intercept: number;
  slope: number;
}

/** Sums of weight, weight x, weight x^2. */
interface Information {
  w: number;
  wx: number;
  wxx: number;
}

const MAX_ITERATIONS = 200;
const MAX_STEP_HALVINGS = 60;
/** Squared length of a step in standard errors. Below this, full steps converge quadratically and need no guard. */
const NEAR_DECREMENT = 1e-8;
/** A billionth of a standard error, squared: the step that is this short is the last. */
const CONVERGED_DECREMENT = 1e-18;
/** Steps that stay below a millionth of a standard error without shrinking are rounding error, not a way still to go. */
const ROUNDING_DECREMENT = 1e-12;

/**
 * Maximum-likelihood probit regression on one variable.
 *
 * @param data  see ProbitData
 * @returns the fit, or a refusal with its reason:
 *   'too-few-points'   fewer than 2 points with a trial;
 *   'no-variation'     only one distinct x, or all seeds responded, or none did: no finite line is most likely;
 *   'separation'       some x parts all successes from all failures: the best slope is infinite;
 *   'did-not-converge' the arithmetic gave out before the answer was reached (a likelihood too flat to climb)
 * @throws RangeError when lengths differ, an x is not finite, or a count is not an integer in its range
 * @see Finney (1971), Probit Analysis, 3rd ed.; McCullagh & Nelder (1989), Generalized Linear Models, ch. 4
 * Checked against R `glm(family = binomial(probit))`: tests/golden/probit-regression.json
 */
export function fitProbit(data: ProbitData): ProbitFit | ProbitRefusal {
  const raw = readProbitPoints(data);
  const refusal = refuseUnfittable(raw);
  if (refusal) return refusal;

  const { centre, scale } = centreAndScale(raw);
  const points = raw.map((point) => ({ ...point, x: (point.x - centre) / scale }));
  const line = climb(points);
  if (!line) return refuse('did-not-converge');

  const covariance = choleskyInverse(matrixOf(derivatives(points, line).expected));
  if (!covariance) return refuse('did-not-converge');
  const [[varianceIntercept, covarianceZ], [, varianceSlope]] = covariance as [[number, number], [number, number]];

  // Back from z = (x - centre) / scale to x.
  const shift = centre / scale;
  const slope = line.slope / scale;
  const covarianceX = (covarianceZ - shift * varianceSlope) / scale;
  const { deviance, pearsonChiSquare } = goodnessOfFit(points, line);
  return {
    ok: true,
    intercept: line.intercept - line.slope * shift,
    slope,
    covariance: [
      [varianceIntercept - 2 * shift * covarianceZ + shift * shift * varianceSlope, covarianceX],
      [covarianceX, varianceSlope / (scale * scale)],
    ],
    deviance,
    pearsonChiSquare,
    degreesOfFreedom: points.length - 2,
  };
}

function centreAndScale(points: readonly ProbitPoint[]): { centre: number; scale: number } {
  const total = points.reduce((sum, point) => sum + point.successes + point.failures, 0);
  const centre = points.reduce((sum, point) => sum + point.x * ((point.successes + point.failures) / total), 0);
  return { centre, scale: Math.max(...points.map((point) => Math.abs(point.x - centre))) };
}

/** Newton's method from the flat line through the overall proportion; null when it gives out. */
function climb(points: readonly ProbitPoint[]): Line | null {
  const successes = points.reduce((sum, point) => sum + point.successes, 0);
  const failures = points.reduce((sum, point) => sum + point.failures, 0);
  let previousDecrement = Number.POSITIVE_INFINITY;
  let line: Line = { intercept: normalQuantile(successes / (successes + failures)), slope: 0 };

  for (let iteration = 0; iteration < MAX_ITERATIONS; iteration++) {
    const { score, observed } = derivatives(points, line);
    const factor = choleskyFactor(matrixOf(observed));
    if (!factor) return null;
    const [intercept, slope] = choleskySolve(factor, [score.intercept, score.slope]) as [number, number];
    const step: Line = { intercept, slope };
    const decrement = step.intercept * score.intercept + step.slope * score.slope;
    const atRoundingLimit = decrement < ROUNDING_DECREMENT && decrement >= previousDecrement;
    if (decrement <= CONVERGED_DECREMENT || atRoundingLimit) return add(line, step, 1);
    previousDecrement = decrement;
    // Near the top the gain in likelihood drowns in rounding, while the score still points rightly.
    const next = decrement < NEAR_DECREMENT ? add(line, step, 1) : halvedUntilBetter(points, line, step);
    if (!next) return null;
    line = next;
  }
  return null;
}

function halvedUntilBetter(points: readonly ProbitPoint[], line: Line, step: Line): Line | null {
  const likelihood = logLikelihood(points, line);
  let fraction = 1;
  for (let halving = 0; halving < MAX_STEP_HALVINGS; halving++) {
    const next = add(line, step, fraction);
    if (logLikelihood(points, next) > likelihood) return next;
    fraction /= 2;
  }
  return null;
}

function add(line: Line, step: Line, fraction: number): Line {
  return { intercept: line.intercept + fraction * step.intercept, slope: line.slope + fraction * step.slope };
}

function logLikelihood(points: readonly ProbitPoint[], line: Line): number {
  let sum = 0;
  for (const { x, successes, failures } of points) {
    const probit = line.intercept + line.slope * x;
    if (successes > 0) sum += successes * normalLogCdf(probit);
    if (failures > 0) sum += failures * normalLogCdf(-probit);
  }
  return sum;
}

/** First derivatives of the log-likelihood, and its curvature as observed (to climb by) and as expected (to report). */
function derivatives(
  points: readonly ProbitPoint[],
  line: Line,
): { score: Line; observed: Information; expected: Information } {
  const score: Line = { intercept: 0, slope: 0 };
  const observed: Information = { w: 0, wx: 0, wxx: 0 };
  const expected: Information = { w: 0, wx: 0, wxx: 0 };
  for (const { x, successes, failures } of points) {
    const probit = line.intercept + line.slope * x;
    const logDensity = normalLogDensity(probit);
    // density / P and density / (1 - P), through logarithms because both parts underflow together far out.
    const perSuccess = Math.exp(logDensity - normalLogCdf(probit));
    const perFailure = Math.exp(logDensity - normalLogCdf(-probit));
    const residual = successes * perSuccess - failures * perFailure;
    score.intercept += residual;
    score.slope += residual * x;
    addWeight(expected, (successes + failures) * perSuccess * perFailure, x);
    addWeight(
      observed,
      successes * perSuccess * (perSuccess + probit) + failures * perFailure * (perFailure - probit),
      x,
    );
  }
  return { score, observed, expected };
}

function addWeight(information: Information, weight: number, x: number): void {
  information.w += weight;
  information.wx += weight * x;
  information.wxx += weight * x * x;
}

function matrixOf({ w, wx, wxx }: Information): number[][] {
  return [
    [w, wx],
    [wx, wxx],
  ];
}

function goodnessOfFit(points: readonly ProbitPoint[], line: Line): { deviance: number; pearsonChiSquare: number } {
  let deviance = 0;
  let pearsonChiSquare = 0;
  for (const { x, successes, failures } of points) {
    const trials = successes + failures;
    const probit = line.intercept + line.slope * x;
    const logP = normalLogCdf(probit);
    const logQ = normalLogCdf(-probit);
    if (successes > 0) deviance += 2 * successes * (Math.log(successes / trials) - logP);
    if (failures > 0) deviance += 2 * failures * (Math.log(failures / trials) - logQ);
    // (s - nP)^2 / (nPQ), with s - nP = sQ - fP: each term keeps its own digits.
    const residual = successes * Math.exp(logQ) - failures * Math.exp(logP);
    if (residual !== 0) pearsonChiSquare += (residual * residual) / (trials * Math.exp(logP + logQ));
  }
  return { deviance: Math.max(0, deviance), pearsonChiSquare };
}
