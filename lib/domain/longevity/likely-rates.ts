/**
 * The outer half of the lot model: finds the relative rates of ageing that the tests and the prior leave plausible, and
 * tabulates K at enough of them.
 *
 * A search from two starting points (the prior's mean, and a straight line through the tests) finds the most plausible
 * rate; contradictory tests can leave a second. From there it walks both ways until the density has fallen by e^-7.5,
 * with steps short where the density bends and long where it does not.
 */
import { normalQuantile } from '../statistics/normal-distribution';
import {
  emptyTable,
  findInitialViabilityMode,
  found,
  type InitialViabilityTable,
  type LotProblem,
  tableLength,
  tabulateInitialViability,
} from './initial-viability-given-rate';
import { KNOT_LENGTH } from './posterior-knot';

const END_DROP = 7.5;
const UNIMPORTANT_DROP = 6;
const STEP_IN_WIDTHS = 1;
const CAREFUL_STEP_IN_WIDTHS = 0.7;
/** In log rate: the rate then grows by less than 2.5 across a cell. */
const WIDEST_STEP = 0.7;
const CAREFUL_WIDEST_STEP = 0.5;
const WIDEST_RESHAPE = 1.35;
const CAREFUL_RESHAPE = 1.2;
const MOST_SLIP = 0.1;
const MOST_MODE_SLIP = 0.05;
const MAX_TABLES = 400;
const MAX_SEARCH_STEPS = 60;

type Peak = { logRate: number; mode: number; height: number; bend: number };

const sum = new Float64Array(4);
// Working space of one fit, reused by the next: small arrays made by the dozen would cost more than the sums in them.
let working = new Float64Array(0);

/** Tables in rising order of rate, and the numbers they point into: working space, good until the next lot is begun. */
export type LikelyRates = {
  tables: readonly InitialViabilityTable[];
  numbers: Float64Array;
  /** numbers taken; there is room for the knots behind them */
  used: number;
};

/** Highest point of the density over both K and logRate, reached uphill from a start. */
function climb(problem: LotProblem, startLogRate: number, startInitial: number): Peak {
  let logRate = startLogRate;
  let step = 0;
  let guess = startInitial;
  let best: Peak | undefined;
  for (let i = 0; i < MAX_SEARCH_STEPS; i += 1) {
    const rate = Math.exp(logRate);
    findInitialViabilityMode(problem, rate, guess);
    const { mode, logDensity, curvature } = found;
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
      sum[3] = mode - lost;
      likelihood.addAt(sum);
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
  const room = (2 * MAX_TABLES + 3) * (length + 2 * KNOT_LENGTH);
  if (working.length < room) working = new Float64Array(room);
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
  count = 0;
  const top = nextTable();
  tabulateInitialViability(problem, best.logRate, undefined, best.mode, working, 0, top);
  const stepInWidths = problem.careful ? CAREFUL_STEP_IN_WIDTHS : STEP_IN_WIDTHS;
  const firstStep = stepInWidths / Math.sqrt(best.bend);
  above.length = 0;
  below.length = 0;
  walk(problem, top, firstStep, stepInWidths, highest, above);
  walk(problem, top, -firstStep, stepInWidths, lowest, below);
  let peak = top.logWeight;
  for (const table of above) peak = Math.max(peak, table.logWeight);
  for (const table of below) peak = Math.max(peak, table.logWeight);
  tables.length = 0;
  for (let i = below.length - 1; i >= 0; i -= 1) tables.push(below[i] as InitialViabilityTable);
  tables.push(top);
  for (const table of above) tables.push(table);
  // One table beyond the limit stays, so that the mass falls to next to nothing inside.
  let from = 0;
  let to = tables.length - 1;
  while (from < to - 2 && (tables[from + 1] as InitialViabilityTable).logWeight < peak - END_DROP) from += 1;
  while (to > from + 2 && (tables[to - 1] as InitialViabilityTable).logWeight < peak - END_DROP) to -= 1;
  return {
    tables: from === 0 && to === tables.length - 1 ? tables : tables.slice(from, to + 1),
    numbers: working,
    used: count * length,
  };
}

const pool: InitialViabilityTable[] = [];
const above: InitialViabilityTable[] = [];
const below: InitialViabilityTable[] = [];
const tables: InitialViabilityTable[] = [];
let count = 0;

function nextTable(): InitialViabilityTable {
  const table = pool[count] ?? emptyTable();
  pool[count] = table;
  count += 1;
  return table;
}

/** Walks from the top table in steps of the sign of `firstStep`, at least past `hullEnd`. */
function walk(
  problem: LotProblem,
  top: InitialViabilityTable,
  firstStep: number,
  stepInWidths: number,
  hullEnd: number,
  walked: InitialViabilityTable[],
): void {
  const direction = Math.sign(firstStep);
  const longest = Math.min(
    problem.careful ? CAREFUL_WIDEST_STEP : WIDEST_STEP,
    1 / Math.sqrt(problem.logRatePrecision),
  );
  const length = tableLength(problem.sideIntervals);
  const widestReshape = problem.careful ? CAREFUL_RESHAPE : WIDEST_RESHAPE;
  let here = top;
  let peak = top.logWeight;
  let step = Math.min(Math.abs(firstStep), longest);
  let next = nextTable();
  for (let tries = 0; tries < MAX_TABLES; tries += 1) {
    tabulateInitialViability(problem, here.logRate + direction * step, here, 0, working, (count - 1) * length, next);
    const nextPeak = Math.max(peak, next.logWeight);
    const important = Math.max(here.logWeight, next.logWeight) > nextPeak - UNIMPORTANT_DROP;
    const bend = step * Math.abs(next.logWeightSlope - here.logWeightSlope);
    const target = stepInWidths * stepInWidths * (important ? 1 : 4);
    const limit = important ? 1 : 6;
    const slip = Math.abs(
      next.logWeight - here.logWeight - 0.5 * direction * step * (here.logWeightSlope + next.logWeightSlope),
    );
    const modeSlip =
      Math.abs(next.mode - here.mode - 0.5 * direction * step * (here.modeSlope + next.modeSlope)) /
      Math.min(here.scale, next.scale);
    const rough =
      bend > 2.5 * target ||
      slip > MOST_SLIP * limit ||
      modeSlip > MOST_MODE_SLIP * limit ||
      (important && reshaped(here, next, widestReshape));
    if (rough && step > 1e-9 * (1 + Math.abs(here.logRate))) {
      step *= 0.5;
      continue;
    }
    walked.push(next);
    here = next;
    peak = nextPeak;
    const past = direction * (here.logRate - hullEnd) >= 0;
    const falling = direction * here.logWeightSlope < 0;
    if (past && falling && here.logWeight < peak - END_DROP) break;
    step = Math.min(longest, step * Math.max(0.5, Math.min(2, Math.sqrt(target / Math.max(bend, 1e-12)))));
    next = nextTable();
  }
}

/** Whether the hump of K grew or shrank so much on either side that a table between these two is wanted. */
function reshaped(a: InitialViabilityTable, b: InitialViabilityTable, widest: number): boolean {
  const left = (b.leftSpacing * b.scale) / (a.leftSpacing * a.scale);
  const right = (b.rightSpacing * b.scale) / (a.rightSpacing * a.scale);
  return left > widest || right > widest || left * widest < 1 || right * widest < 1;
}
