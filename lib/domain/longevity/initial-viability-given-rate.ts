/**
 * The inner half of the lot model: how plausible each initial viability K (probits) is, for one relative rate of ageing.
 *
 * Given the rate the density of K has one hump, so it is tabulated at points reaching from the hump's top to where it
 * has fallen by e^-14 on each side. The two sides have their own spacing, because a lot of which every seed grew
 * gives a cliff on the left and a slope on the right. From the log density and its slope at the points come the
 * distribution function and its integral, by the trapezoid rule with slope correction.
 */
import type { TestLikelihood } from './test-likelihood';

/** What the posterior is proportional to: the priors and the tests. */
export type LotProblem = {
  likelihoods: TestLikelihood[];
  initialMean: number;
  initialPrecision: number;
  logRateMean: number;
  logRatePrecision: number;
  /** intervals of the table of K on each side of its top */
  sideIntervals: number;
};

/** Intervals on each side of the top, enough for a hump that is not far from a Gaussian. */
export const FEWEST_SIDE_INTERVALS = 12;
/** Most of them: a prior of sd 5 beside a test in which every seed grew. */
export const MOST_SIDE_INTERVALS = 80;
const MOST_POINTS = 2 * MOST_SIDE_INTERVALS + 1;

/** Numbers of one table: one each of density, distribution function and integral of the latter at every point. */
export const tableLength = (sideIntervals: number): number => 3 * (2 * sideIntervals + 1);

/** K given one rate. Lengths inside the tables are in units of `scale`, measured from `mode`. */
export type InitialViabilityTable = {
  logRate: number;
  rate: number;
  /** log of the probability of the tests and this rate, K integrated out (up to a constant), and its slope in logRate */
  logWeight: number;
  logWeightSlope: number;
  /** top of the hump, probits, and how fast it moves with logRate */
  mode: number;
  modeSlope: number;
  scale: number;
  leftSpacing: number;
  rightSpacing: number;
  /** where this table's numbers begin in the array that holds them: density, distribution function, its integral */
  at: number;
};

const REACH_DROP = 14; // e^-14 is 1e-6: what is cut off cannot matter at the accuracy promised (0.003)
const GAUSSIAN_REACH = Math.sqrt(2 * REACH_DROP);
const MAX_NEWTON_STEPS = 80;
const NEWTON_TOLERANCE = 1e-3; // in units of the hump's width
const MAX_REACH_STEPS = 40;

const sum = new Float64Array(3);
const logs = new Float64Array(MOST_POINTS);
const slopes = new Float64Array(MOST_POINTS);
const slopesTimesLost = new Float64Array(MOST_POINTS);

/** Log density of K given the rate (up to a constant), slope and curvature, in the shared `sum`. */
function logDensityAt(problem: LotProblem, rate: number, initial: number): number {
  const offset = initial - problem.initialMean;
  sum[0] = -0.5 * problem.initialPrecision * offset * offset;
  sum[1] = -problem.initialPrecision * offset;
  sum[2] = -problem.initialPrecision;
  for (const likelihood of problem.likelihoods) likelihood.addAt(initial - rate * likelihood.probitsLost, sum);
  return sum[0] as number;
}

/**
 * The most plausible initial viability for a rate: Newton's method with step halving.
 *
 * @param problem  priors and tests
 * @param rate     relative rate of ageing, >= 0
 * @param guess    where to start, probits
 * @returns the mode in probits, the log density there (up to a constant) and its curvature (< 0)
 * Checked through the lot model: tests/domain/longevity/lot-model.test.ts
 */
export function initialViabilityMode(
  problem: LotProblem,
  rate: number,
  guess: number,
): { mode: number; logDensity: number; curvature: number } {
  let mode = guess;
  let logDensity = logDensityAt(problem, rate, mode);
  for (let i = 0; i < MAX_NEWTON_STEPS; i += 1) {
    // A beta-binomial can bend the other way far from its top; then a step of the prior's own width is taken.
    const bend = Math.max(-(sum[2] as number), 0.25 * problem.initialPrecision);
    let step = (sum[1] as number) / bend;
    if (Math.abs(step) * Math.sqrt(bend) < NEWTON_TOLERANCE) break;
    let next = logDensityAt(problem, rate, mode + step);
    for (let halving = 0; next < logDensity && halving < 50; halving += 1) {
      step *= 0.5;
      next = logDensityAt(problem, rate, mode + step);
    }
    mode += step;
    logDensity = next;
  }
  return { mode, logDensity, curvature: -Math.max(-(sum[2] as number), 0.25 * problem.initialPrecision) };
}

/** Distance from the top at which the log density has fallen by about REACH_DROP, on the side of `direction`. */
function reachFrom(problem: LotProblem, rate: number, mode: number, top: number, guess: number, direction: 1 | -1) {
  let reach = guess;
  let near = 0; // falls too little
  let far = Number.POSITIVE_INFINITY; // falls too much
  for (let i = 0; i < MAX_REACH_STEPS; i += 1) {
    const drop = top - logDensityAt(problem, rate, mode + direction * reach);
    if (Math.abs(drop - REACH_DROP) < 0.05 * REACH_DROP) break;
    if (drop < REACH_DROP) near = reach;
    else far = reach;
    if (far - near < 0.01 * reach) break;
    // A Gaussian falls as the square of the distance; a cliff far from the top does not, so the bracket has the last word.
    const next = reach * Math.min(3, Math.max(0.2, Math.sqrt(REACH_DROP / Math.max(drop, 1e-9))));
    reach = i < 3 && next > near && next < far ? next : far < Number.POSITIVE_INFINITY ? 0.5 * (near + far) : 2 * near;
  }
  return reach;
}

/**
 * Tabulates K for one rate.
 *
 * @param problem   priors and tests
 * @param logRate   natural logarithm of the relative rate
 * @param neighbour the table of a nearby rate, from which the search starts; undefined for the first
 * @param guess     where the search starts without a neighbour, probits
 * @param numbers   receives the table's numbers
 * @param at        where in `numbers`
 * @returns the table, with the distribution function running from 0 to 1
 * Checked through the lot model: tests/domain/longevity/lot-model.test.ts
 */
export function tabulateInitialViability(
  problem: LotProblem,
  logRate: number,
  neighbour: InitialViabilityTable | undefined,
  guess: number,
  numbers: Float64Array,
  at: number,
): InitialViabilityTable {
  const side = problem.sideIntervals;
  const points = 2 * side + 1;
  const rate = Math.exp(logRate);
  const start = neighbour ? neighbour.mode + neighbour.modeSlope * (logRate - neighbour.logRate) : guess;
  const { mode, logDensity: top, curvature } = initialViabilityMode(problem, rate, start);
  let crossCurvature = 0; // of log density in K and logRate
  for (const likelihood of problem.likelihoods) {
    sum[2] = 0;
    likelihood.addAt(mode - rate * likelihood.probitsLost, sum);
    crossCurvature -= (sum[2] as number) * rate * likelihood.probitsLost;
  }
  const gaussian = GAUSSIAN_REACH / Math.sqrt(-curvature);
  const left = reachFrom(
    problem,
    rate,
    mode,
    top,
    neighbour ? neighbour.leftSpacing * side * neighbour.scale : gaussian,
    -1,
  );
  const right = reachFrom(
    problem,
    rate,
    mode,
    top,
    neighbour ? neighbour.rightSpacing * side * neighbour.scale : gaussian,
    1,
  );
  const scale = (left + right) / (2 * GAUSSIAN_REACH);
  const leftSpacing = left / side;
  const rightSpacing = right / side;

  for (let j = 0; j < points; j += 1) {
    const offset = mode + (j - side) * (j < side ? leftSpacing : rightSpacing) - problem.initialMean;
    logs[j] = -0.5 * problem.initialPrecision * offset * offset - top;
    slopes[j] = -problem.initialPrecision * offset;
    slopesTimesLost[j] = 0;
  }
  for (const likelihood of problem.likelihoods) {
    const from = mode - rate * likelihood.probitsLost;
    likelihood.addAlong(from - left, leftSpacing, side, 0, logs, slopes, slopesTimesLost);
    likelihood.addAlong(from, rightSpacing, side + 1, side, logs, slopes, slopesTimesLost);
  }

  const cumulativeAt = at + points;
  const integralAt = at + 2 * points;
  let slopeOfLikelihood = 0; // sum of density times d(log likelihood)/d(logRate)
  let before = Math.exp(logs[0] as number);
  numbers[at] = before;
  numbers[cumulativeAt] = 0;
  numbers[integralAt] = 0;
  for (let j = 1; j < points; j += 1) {
    const spacing = j <= side ? leftSpacing : rightSpacing;
    const here = Math.exp(logs[j] as number);
    numbers[at + j] = here;
    const correction = (spacing * spacing * (before * (slopes[j - 1] as number) - here * (slopes[j] as number))) / 12;
    // In a far corner the correction can outweigh the trapezoid; a distribution function must not fall.
    const mass = Math.max(0, 0.5 * spacing * (before + here) + correction);
    numbers[cumulativeAt + j] = (numbers[cumulativeAt + j - 1] as number) + mass;
    slopeOfLikelihood -=
      0.5 * spacing * rate * (before * (slopesTimesLost[j - 1] as number) + here * (slopesTimesLost[j] as number));
    before = here;
  }
  const mass = numbers[cumulativeAt + points - 1] as number;
  const offset = logRate - problem.logRateMean;
  for (let j = 0; j < points; j += 1) {
    numbers[at + j] = ((numbers[at + j] as number) * scale) / mass;
    numbers[cumulativeAt + j] = (numbers[cumulativeAt + j] as number) / mass;
    if (j === 0) continue;
    const spacing = (j <= side ? leftSpacing : rightSpacing) / scale;
    numbers[integralAt + j] =
      (numbers[integralAt + j - 1] as number) +
      0.5 * spacing * ((numbers[cumulativeAt + j - 1] as number) + (numbers[cumulativeAt + j] as number)) +
      (spacing * spacing * ((numbers[at + j - 1] as number) - (numbers[at + j] as number))) / 12;
  }
  return {
    logRate,
    rate,
    logWeight: top + Math.log(mass) - 0.5 * problem.logRatePrecision * offset * offset,
    logWeightSlope: slopeOfLikelihood / mass - problem.logRatePrecision * offset,
    mode,
    modeSlope: crossCurvature / -curvature,
    scale,
    leftSpacing: leftSpacing / scale,
    rightSpacing: rightSpacing / scale,
    at,
  };
}
