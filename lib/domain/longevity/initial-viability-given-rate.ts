/**
 * The inner half of the lot model: how plausible each initial viability K (probits) is, for one relative rate of ageing.
 *
 * Given the rate the density of K has one hump, so it is tabulated at points reaching from the hump's top to where it
 * has fallen by about e^-10 on each side. The two sides have their own spacing, because a lot of which every seed grew
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
  /** a wide prior, under which humps can be far from Gaussian: steps and tolerances are then finer */
  careful: boolean;
};

/** Intervals on each side of the top, enough for a hump that is not far from a Gaussian. */
export const FEWEST_SIDE_INTERVALS = 8;
export const CAREFUL_SIDE_INTERVALS = 10;
/** Most of them: a prior of sd 5 beside a test in which every seed grew. */
export const MOST_SIDE_INTERVALS = 80;
const MOST_POINTS = 2 * MOST_SIDE_INTERVALS + 1;

/** Numbers of one table: distribution function, density and integral of the former at one point after the other. */
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
  /** where this table's numbers begin in the array that holds them */
  at: number;
};

/** An empty table to fill: tables are working space, used again by the next lot. */
export const emptyTable = (): InitialViabilityTable => ({
  logRate: 0.5,
  rate: 0.5,
  logWeight: 0.5,
  logWeightSlope: 0.5,
  mode: 0.5,
  modeSlope: 0.5,
  scale: 0.5,
  leftSpacing: 0.5,
  rightSpacing: 0.5,
  at: 0,
});

const REACH_DROP = 10; // e^-10 is 5e-5: what is cut off weighs a few millionths
/** What is near enough. */
const REACH_DROPS = { least: 8, most: 15 };
const CAREFUL_REACH_DROPS = { least: 9.5, most: 10.5 };
const GAUSSIAN_REACH = Math.sqrt(2 * REACH_DROP);
const MAX_NEWTON_STEPS = 80;
/** In units of the hump's width. A table need not begin quite at the top: it only counts its points from there. */
const NEWTON_TOLERANCE = 0.1;
const CAREFUL_NEWTON_TOLERANCE = 0.003;
const MAX_REACH_STEPS = 40;

const sum = new Float64Array(4);
const logs = new Float64Array(MOST_POINTS);
const slopes = new Float64Array(MOST_POINTS);
const slopesTimesLost = new Float64Array(MOST_POINTS);

/** Log density of K given the rate (up to a constant), slope and curvature, in the shared `sum`. */
function logDensityAt(problem: LotProblem, rate: number, initial: number): number {
  const offset = initial - problem.initialMean;
  sum[0] = -0.5 * problem.initialPrecision * offset * offset;
  sum[1] = -problem.initialPrecision * offset;
  sum[2] = -problem.initialPrecision;
  for (const likelihood of problem.likelihoods) {
    sum[3] = initial - rate * likelihood.probitsLost;
    likelihood.addAt(sum);
  }
  return sum[0] as number;
}

/** What `findInitialViabilityMode` found, handed back without an allocation. */
export const found = { mode: 0.5, logDensity: 0.5, curvature: -0.5 };

/**
 * The most plausible initial viability for a rate, to within a tenth of the hump's width: Newton's method with step halving.
 * Mode in probits, log density there (up to a constant) and its curvature (< 0) go to `found`.
 *
 * @param problem  priors and tests
 * @param rate     relative rate of ageing, >= 0
 * @param guess    where to start, probits
 * Checked through the lot model: tests/domain/longevity/lot-model.test.ts
 */
export function findInitialViabilityMode(problem: LotProblem, rate: number, guess: number): void {
  const tolerance = problem.careful ? CAREFUL_NEWTON_TOLERANCE : NEWTON_TOLERANCE;
  let mode = guess;
  let logDensity = logDensityAt(problem, rate, mode);
  for (let i = 0; i < MAX_NEWTON_STEPS; i += 1) {
    // A beta-binomial can bend the other way far from its top; then a step of the prior's own width is taken.
    const bend = Math.max(-(sum[2] as number), 0.25 * problem.initialPrecision);
    let step = (sum[1] as number) / bend;
    if (Math.abs(step) * Math.sqrt(bend) < tolerance) {
      // So near the top a last step needs no look at where it leads.
      mode += step;
      logDensity += 0.5 * step * (sum[1] as number);
      break;
    }
    let next = logDensityAt(problem, rate, mode + step);
    for (let halving = 0; next < logDensity && halving < 50; halving += 1) {
      step *= 0.5;
      next = logDensityAt(problem, rate, mode + step);
    }
    mode += step;
    logDensity = next;
  }
  found.mode = mode;
  found.logDensity = logDensity;
  found.curvature = -Math.max(-(sum[2] as number), 0.25 * problem.initialPrecision);
}

/** Distance from the top at which the log density has fallen by about REACH_DROP, on the side of `direction`. */
function reachFrom(problem: LotProblem, rate: number, mode: number, top: number, guess: number, direction: 1 | -1) {
  const least = problem.careful ? CAREFUL_REACH_DROPS.least : REACH_DROPS.least;
  const most = problem.careful ? CAREFUL_REACH_DROPS.most : REACH_DROPS.most;
  let reach = guess;
  let near = 0; // falls too little
  let far = Number.POSITIVE_INFINITY; // falls too much
  for (let i = 0; i < MAX_REACH_STEPS; i += 1) {
    const drop = top - logDensityAt(problem, rate, mode + direction * reach);
    if (drop > least && drop < most) break;
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
 * @param numbers   receives the table's numbers, with the distribution function running from 0 to 1
 * @param at        where in `numbers`
 * @param table     receives the rest of the table
 * Checked through the lot model: tests/domain/longevity/lot-model.test.ts
 */
export function tabulateInitialViability(
  problem: LotProblem,
  logRate: number,
  neighbour: InitialViabilityTable | undefined,
  guess: number,
  numbers: Float64Array,
  at: number,
  table: InitialViabilityTable,
): void {
  const side = problem.sideIntervals;
  const points = 2 * side + 1;
  const rate = Math.exp(logRate);
  const start = neighbour ? neighbour.mode + neighbour.modeSlope * (logRate - neighbour.logRate) : guess;
  findInitialViabilityMode(problem, rate, start);
  const { mode, logDensity: top, curvature } = found;
  let crossCurvature = 0; // of log density in K and logRate
  for (const likelihood of problem.likelihoods) {
    sum[2] = 0;
    sum[3] = mode - rate * likelihood.probitsLost;
    likelihood.addAt(sum);
    crossCurvature -= (sum[2] as number) * rate * likelihood.probitsLost;
  }
  const gaussian = GAUSSIAN_REACH / Math.sqrt(-curvature);
  const leftGuess = neighbour ? neighbour.leftSpacing * side * neighbour.scale : gaussian;
  const rightGuess = neighbour ? neighbour.rightSpacing * side * neighbour.scale : gaussian;
  const left = reachFrom(problem, rate, mode, top, leftGuess, -1);
  const right = reachFrom(problem, rate, mode, top, rightGuess, 1);
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

  let slopeOfLikelihood = 0; // sum of density times d(log likelihood)/d(logRate), over the rate
  let mass = 0;
  let before = 0;
  for (let j = 0; j < points; j += 1) {
    const here = Math.exp(logs[j] as number);
    if (j > 0) {
      const spacing = j <= side ? leftSpacing : rightSpacing;
      const correction = (spacing * spacing * (before * (slopes[j - 1] as number) - here * (slopes[j] as number))) / 12;
      // In a far corner the correction can outweigh the trapezoid; a distribution function must not fall.
      mass += Math.max(0, 0.5 * spacing * (before + here) + correction);
      slopeOfLikelihood +=
        0.5 * spacing * (before * (slopesTimesLost[j - 1] as number) + here * (slopesTimesLost[j] as number));
    }
    numbers[at + 3 * j] = mass;
    numbers[at + 3 * j + 1] = here;
    before = here;
  }
  const perMass = 1 / mass;
  let cumulative = 0;
  let density = (numbers[at + 1] as number) * scale * perMass;
  let integral = 0;
  let spacing = leftSpacing / scale;
  numbers[at + 1] = density;
  numbers[at + 2] = 0;
  for (let j = 1; j < points; j += 1) {
    const i = at + 3 * j;
    const nextCumulative = (numbers[i] as number) * perMass;
    const nextDensity = (numbers[i + 1] as number) * scale * perMass;
    integral += 0.5 * spacing * (cumulative + nextCumulative) + (spacing * spacing * (density - nextDensity)) / 12;
    numbers[i] = nextCumulative;
    numbers[i + 1] = nextDensity;
    numbers[i + 2] = integral;
    cumulative = nextCumulative;
    density = nextDensity;
    if (j === side) spacing = rightSpacing / scale;
  }
  const offset = logRate - problem.logRateMean;
  table.logRate = logRate;
  table.rate = rate;
  table.logWeight = top + Math.log(mass) - 0.5 * problem.logRatePrecision * offset * offset;
  table.logWeightSlope = -slopeOfLikelihood * rate * perMass - problem.logRatePrecision * offset;
  table.mode = mode;
  table.modeSlope = crossCurvature / -curvature;
  table.scale = scale;
  table.leftSpacing = leftSpacing / scale;
  table.rightSpacing = rightSpacing / scale;
  table.at = at;
}
