/**
 * The outer half of the lot model: finds the relative rates of ageing that the tests and the prior leave plausible, and
 * tabulates K at enough of them.
 *
 * A search from two starting points (the prior's mean, and a straight line through the tests) finds the most plausible
 * rate; contradictory tests can leave a second. From there it walks both ways until the density has fallen by e^-16,
 * with steps short where the density bends and long where it does not.
 */
import { normalQuantile } from '../statistics/normal-distribution';
import {
  type InitialViabilityTable,
  initialViabilityMode,
  type LotProblem,
  tableLength,
  tabulateInitialViability,
} from './initial-viability-given-rate';

const END_DROP = 16;
const UNIMPORTANT_DROP = 9;
const STEP_IN_WIDTHS = 0.6; // widths of a Gaussian of the same bend
const WIDEST_RESHAPE = 1.1;
const MAX_TABLES = 400;
const MAX_SEARCH_STEPS = 60;

type Peak = { logRate: number; mode: number; height: number; bend: number };

const sum = new Float64Array(3);
// Working space of one fit, reused by the next: small arrays made by the dozen would cost more than the sums in them.
let working = new Float64Array(0);

/** Tables in rising order of rate, and the numbers they point into. */
export type LikelyRates = { tables: InitialViabilityTable[]; numbers: Float64Array };

/** Highest point of the density over both K and logRate, reached uphill from a start. */
function climb(problem: LotProblem, startLogRate: number, startInitial: number): Peak {
  let logRate = startLogRate;
  let step = 0;
  let guess = startInitial;
  let best: Peak | undefined;
  for (let i = 0; i < MAX_SEARCH_STEPS; i += 1) {
    const rate = Math.exp(logRate);
    const { mode, logDensity, curvature } = initialViabilityMode(problem, rate, guess);
    const offset = logRate - problem.logRateMean;
    const height = logDensity - 0.5 * problem.logRatePrecision * offset * offset;
    if (best && height < best.height - 1e-9) {
      step *= 0.5;
      if (Math.abs(step) * Math.sqrt(best.bend) < 1e-3) return best;
      logRate = best.logRate + step;
      continue;
    }
    let slope = -problem.logRatePrecision * offset;
    let bend = problem.logRatePrecision;
    let cross = 0;
    for (const likelihood of problem.likelihoods) {
      sum.fill(0);
      const lost = rate * likelihood.probitsLost;
      likelihood.addAt(mode - lost, sum);
      slope -= (sum[1] as number) * lost;
      bend -= (sum[2] as number) * lost * lost - (sum[1] as number) * lost;
      cross -= (sum[2] as number) * lost;
    }
    bend -= (cross * cross) / -curvature;
    const steepness = bend > 0.25 * problem.logRatePrecision ? bend : 0.25 * problem.logRatePrecision + Math.abs(slope);
    best = { logRate, mode, height, bend: steepness };
    step = Math.max(-2, Math.min(2, slope / steepness));
    if (Math.abs(step) * Math.sqrt(steepness) < 0.01) return best;
    logRate += step;
    guess = mode;
  }
  return best as Peak;
}

/** Log rate and initial viability of a rough straight line through the tests and the prior; undefined if it does not fall. */
function straightLine(problem: LotProblem): { logRate: number; initial: number } | undefined {
  let weight = problem.initialPrecision;
  let meanLost = 0;
  let meanProbit = problem.initialPrecision * problem.initialMean;
  const points: { lost: number; probit: number; weight: number }[] = [];
  for (const { probitsLost, germinated, sown } of problem.likelihoods) {
    const point = { lost: probitsLost, probit: normalQuantile((germinated + 0.5) / (sown + 1)), weight: 0.6 * sown };
    points.push(point);
    weight += point.weight;
    meanLost += point.weight * point.lost;
    meanProbit += point.weight * point.probit;
  }
  points.push({ lost: 0, probit: problem.initialMean, weight: problem.initialPrecision });
  meanLost /= weight;
  meanProbit /= weight;
  let square = 0;
  let product = 0;
  for (const point of points) {
    square += point.weight * (point.lost - meanLost) ** 2;
    product += point.weight * (point.lost - meanLost) * (point.probit - meanProbit);
  }
  if (!(product < 0 && square > 0)) return undefined;
  const rate = -product / square;
  return { logRate: Math.log(rate), initial: meanProbit + rate * meanLost };
}

/**
 * Tables of K at all plausible rates, in rising order of rate.
 *
 * @param problem  priors and tests
 * @returns at least three tables, closest together where the density bends most
 * Checked through the lot model: tests/domain/longevity/lot-model.test.ts
 */
export function tabulateLikelyRates(problem: LotProblem): LikelyRates {
  const length = tableLength(problem.sideIntervals);
  if (working.length < (2 * MAX_TABLES + 2) * length) working = new Float64Array((2 * MAX_TABLES + 2) * length);
  let best = climb(problem, problem.logRateMean, problem.initialMean);
  let lowest = best.logRate;
  let highest = best.logRate;
  const line = problem.likelihoods.length > 0 ? straightLine(problem) : undefined;
  if (line) {
    const widest = 8 / Math.sqrt(problem.logRatePrecision);
    const logRate = Math.max(problem.logRateMean - widest, Math.min(problem.logRateMean + widest, line.logRate));
    const other = climb(problem, logRate, line.initial);
    if (Math.min(other.height, best.height) > Math.max(other.height, best.height) - END_DROP) {
      lowest = Math.min(lowest, other.logRate);
      highest = Math.max(highest, other.logRate);
    } else if (other.height > best.height) {
      lowest = other.logRate;
      highest = other.logRate;
    }
    if (other.height > best.height) best = other;
  }
  const top = tabulateInitialViability(problem, best.logRate, undefined, best.mode, working, 0);
  const firstStep = STEP_IN_WIDTHS / Math.sqrt(best.bend);
  const above = walk(problem, top, firstStep, highest, 1);
  const below = walk(problem, top, -firstStep, lowest, 1 + above.length);
  const tables = [...below.reverse(), top, ...above];
  const peak = tables.reduce((height, table) => Math.max(height, table.logWeight), Number.NEGATIVE_INFINITY);
  let from = 0;
  let to = tables.length - 1;
  // One table beyond the limit stays, so that the mass falls to next to nothing inside.
  while (from < to - 2 && (tables[from + 1] as InitialViabilityTable).logWeight < peak - END_DROP) from += 1;
  while (to > from + 2 && (tables[to - 1] as InitialViabilityTable).logWeight < peak - END_DROP) to -= 1;
  const kept = tables.slice(from, to + 1);
  const numbers = new Float64Array(kept.length * length);
  kept.forEach((table, i) => {
    numbers.set(working.subarray(table.at, table.at + length), i * length);
    table.at = i * length;
  });
  return { tables: kept, numbers };
}

/** Walks from the top table in steps of the sign of `firstStep`, at least past `hullEnd`. */
function walk(problem: LotProblem, top: InitialViabilityTable, firstStep: number, hullEnd: number, firstRow: number) {
  const direction = Math.sign(firstStep);
  const longest = 1 / Math.sqrt(problem.logRatePrecision);
  const tables: InitialViabilityTable[] = [];
  let here = top;
  let peak = top.logWeight;
  let step = Math.min(Math.abs(firstStep), longest);
  for (let tries = 0; tries < MAX_TABLES; tries += 1) {
    const next = tabulateInitialViability(
      problem,
      here.logRate + direction * step,
      here,
      0,
      working,
      (firstRow + tables.length) * tableLength(problem.sideIntervals),
    );
    const nextPeak = Math.max(peak, next.logWeight);
    const important = Math.max(here.logWeight, next.logWeight) > nextPeak - UNIMPORTANT_DROP;
    const bend = step * Math.abs(next.logWeightSlope - here.logWeightSlope);
    const target = STEP_IN_WIDTHS * STEP_IN_WIDTHS * (important ? 1 : 4);
    const limit = important ? 1 : 6;
    const slip = Math.abs(
      next.logWeight - here.logWeight - 0.5 * direction * step * (here.logWeightSlope + next.logWeightSlope),
    );
    const modeSlip =
      Math.abs(next.mode - here.mode - 0.5 * direction * step * (here.modeSlope + next.modeSlope)) /
      Math.min(here.scale, next.scale);
    const rough =
      bend > 2.5 * target || slip > 0.03 * limit || modeSlip > 0.03 * limit || (important && reshaped(here, next));
    if (rough && step > 1e-9 * (1 + Math.abs(here.logRate))) {
      step *= 0.5;
      continue;
    }
    tables.push(next);
    here = next;
    peak = nextPeak;
    const past = direction * (next.logRate - hullEnd) >= 0;
    const falling = direction * next.logWeightSlope < 0;
    if (past && falling && next.logWeight < peak - END_DROP) break;
    step = Math.min(longest, step * Math.max(0.5, Math.min(2, Math.sqrt(target / Math.max(bend, 1e-12)))));
  }
  return tables;
}

/** Whether the hump of K grew or shrank so much on either side that a table between these two is wanted. */
function reshaped(a: InitialViabilityTable, b: InitialViabilityTable): boolean {
  const left = (b.leftSpacing * b.scale) / (a.leftSpacing * a.scale);
  const right = (b.rightSpacing * b.scale) / (a.rightSpacing * a.scale);
  return left > WIDEST_RESHAPE || right > WIDEST_RESHAPE || left * WIDEST_RESHAPE < 1 || right * WIDEST_RESHAPE < 1;
}
