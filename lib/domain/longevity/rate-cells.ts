/**
 * Cuts the plausible rates into cells with their probabilities: one cell between each two neighbouring tables of K, with a
 * third table, blended of the two, in its middle. Over a cell the chance of being below is averaged by Simpson's rule from
 * these three, or, where the chance jumps within the cell, piece by piece over its four quarters. The place and width of the hump
 * of K, and the weight of a rate, run between the tables as cubics that match their slopes.
 *
 * A posterior is one array, because it is read far more often than looked at and an array costs more to make than to
 * fill: first the tables, then the knots, KNOT_LENGTH numbers each (table, middle, table, middle, ... table), to the end.
 */
import type { InitialViabilityTable } from './initial-viability-given-rate';
import type { LikelyRates } from './likely-rates';
import {
  CELL_MASS,
  FIRST_QUARTER,
  FIRST_WEIGHT,
  HALVES_SHARE,
  KNOT_LENGTH,
  LEFT_SPACING,
  MASS_AFTER,
  MASS_BEFORE,
  MODE,
  PER_LEFT,
  PER_RIGHT,
  PER_SCALE,
  QUARTER_MASS,
  QUARTER_TILT,
  RATE,
  RIGHT_SPACING,
  SCALE,
  TABLE_AT,
  THIRD_QUARTER,
  THIRD_WEIGHT,
} from './posterior-knot';

/**
 * Cells from tables.
 *
 * @param likelyRates  tables in rising order of rate, at least two
 * @returns the numbers of a posterior, and where its knots begin; the probabilities of the cells add to 1
 * Checked through the lot model: tests/domain/longevity/lot-model.test.ts
 */
export function cutRateCells({ tables, numbers: working, used }: LikelyRates): {
  numbers: Float64Array;
  knotsAt: number;
} {
  const knots = 2 * tables.length - 1;
  let peak = Number.NEGATIVE_INFINITY;
  for (const table of tables) peak = Math.max(peak, table.logWeight);
  let total = 0;
  let knot = used;
  let before: InitialViabilityTable | undefined;
  for (const table of tables) {
    if (before) knot += 2 * KNOT_LENGTH;
    setKnot(working, knot, table.rate, table.mode, table.scale, table.at, table.leftSpacing, table.rightSpacing);
    working[knot + MASS_BEFORE] = 0;
    working[knot + MASS_AFTER] = 0;
    if (before) total += setCell(working, knot - KNOT_LENGTH, before, table, peak);
    before = table;
  }
  const perTotal = 1 / total;
  const end = used + knots * KNOT_LENGTH;
  for (knot = used; knot < end; knot += KNOT_LENGTH) {
    for (let i = MASS_BEFORE; i < HALVES_SHARE; i += 1) working[knot + i] = (working[knot + i] as number) * perTotal;
  }
  const numbers = allocate(end);
  for (let i = 0; i < end; i += 1) numbers[i] = working[i] as number;
  return { numbers, knotsAt: used };
}

/** Some dozens of posteriors share one piece of memory: an array apiece costs more to make and clear away than to fill. */
const SHARED = 32_768;
let shared = new ArrayBuffer(0);
let taken = 0;

function allocate(length: number): Float64Array {
  if (length > SHARED / 8) return new Float64Array(length);
  if (8 * (taken + length) > shared.byteLength) {
    shared = new ArrayBuffer(8 * SHARED);
    taken = 0;
  }
  const numbers = new Float64Array(shared, 8 * taken, length);
  taken += length;
  return numbers;
}

function setKnot(
  numbers: Float64Array,
  knot: number,
  rate: number,
  mode: number,
  scale: number,
  at: number,
  leftSpacing: number,
  rightSpacing: number,
): void {
  numbers[knot + RATE] = rate;
  numbers[knot + MODE] = mode;
  numbers[knot + SCALE] = scale;
  numbers[knot + PER_SCALE] = 1 / scale;
  numbers[knot + TABLE_AT] = at;
  numbers[knot + LEFT_SPACING] = leftSpacing;
  numbers[knot + RIGHT_SPACING] = rightSpacing;
  numbers[knot + PER_LEFT] = 1 / leftSpacing;
  numbers[knot + PER_RIGHT] = 1 / rightSpacing;
}

/** Fills in the middle of the cell between two tables, and what the knots beside it weigh in it. Returns the cell's probability. */
function setCell(
  numbers: Float64Array,
  middle: number,
  a: InitialViabilityTable,
  b: InitialViabilityTable,
  peak: number,
): number {
  const before = middle - KNOT_LENGTH;
  const after = middle + KNOT_LENGTH;
  const width = b.logRate - a.logRate;
  const quarterStep = Math.exp(0.25 * width);
  const scaleStep = Math.sqrt(Math.sqrt(b.scale / a.scale));
  const p0 = Math.exp(a.logWeight - peak);
  const p1 = Math.exp(hermite(a.logWeight, b.logWeight, a.logWeightSlope, b.logWeightSlope, width, 0.25) - peak);
  const p2 = Math.exp(hermite(a.logWeight, b.logWeight, a.logWeightSlope, b.logWeightSlope, width, 0.5) - peak);
  const p3 = Math.exp(hermite(a.logWeight, b.logWeight, a.logWeightSlope, b.logWeightSlope, width, 0.75) - peak);
  const p4 = Math.exp(b.logWeight - peak);
  // A quartic through five densities, integrated over each quarter.
  const share = (0.25 * width) / 720;
  const m0 = Math.max(0, share * (251 * p0 + 646 * p1 - 264 * p2 + 106 * p3 - 19 * p4));
  const m1 = Math.max(0, share * (-19 * p0 + 346 * p1 + 456 * p2 - 74 * p3 + 11 * p4));
  const m2 = Math.max(0, share * (11 * p0 - 74 * p1 + 456 * p2 + 346 * p3 - 19 * p4));
  const m3 = Math.max(0, share * (-19 * p0 + 106 * p1 - 264 * p2 + 646 * p3 + 251 * p4));
  const mass = m0 + m1 + m2 + m3;
  const simpson = mass / (p0 + 4 * p2 + p4);
  const halves = mass / (p0 + 4 * p1 + 2 * p2 + 4 * p3 + p4);
  numbers[before + MASS_AFTER] = simpson * p0;
  numbers[middle + MASS_BEFORE] = simpson * 4 * p2;
  numbers[middle + MASS_AFTER] = 0;
  numbers[after + MASS_BEFORE] = simpson * p4;
  numbers[middle + CELL_MASS] = mass;
  numbers[middle + QUARTER_MASS] = m0;
  numbers[middle + QUARTER_MASS + 1] = m1;
  numbers[middle + QUARTER_MASS + 2] = m2;
  numbers[middle + QUARTER_MASS + 3] = m3;
  numbers[middle + FIRST_WEIGHT] = 4 * halves * p1;
  numbers[middle + THIRD_WEIGHT] = 4 * halves * p3;
  numbers[middle + HALVES_SHARE] = halves / simpson;
  // The density per unit of rate is that per unit of log rate, over the rate.
  numbers[middle + QUARTER_TILT] = tilt(p0, p1 / quarterStep);
  numbers[middle + QUARTER_TILT + 1] = tilt(p1, p2 / quarterStep);
  numbers[middle + QUARTER_TILT + 2] = tilt(p2, p3 / quarterStep);
  numbers[middle + QUARTER_TILT + 3] = tilt(p3, p4 / quarterStep);
  const firstRate = a.rate * quarterStep;
  const middleRate = firstRate * quarterStep;
  const firstScale = a.scale * scaleStep;
  const middleScale = firstScale * scaleStep;
  numbers[middle + FIRST_QUARTER] = firstRate;
  numbers[middle + FIRST_QUARTER + 1] = hermite(a.mode, b.mode, a.modeSlope, b.modeSlope, width, 0.25);
  numbers[middle + FIRST_QUARTER + 2] = 1 / firstScale;
  numbers[middle + THIRD_QUARTER] = middleRate * quarterStep;
  numbers[middle + THIRD_QUARTER + 1] = hermite(a.mode, b.mode, a.modeSlope, b.modeSlope, width, 0.75);
  numbers[middle + THIRD_QUARTER + 2] = 1 / (middleScale * scaleStep);
  setKnot(
    numbers,
    middle,
    middleRate,
    hermite(a.mode, b.mode, a.modeSlope, b.modeSlope, width, 0.5),
    middleScale,
    a.at,
    Math.sqrt(a.leftSpacing * a.scale * b.leftSpacing * b.scale) / middleScale,
    Math.sqrt(a.rightSpacing * a.scale * b.rightSpacing * b.scale) / middleScale,
  );
  return mass;
}

const tilt = (start: number, end: number): number => (start + end > 0 ? (end - start) / (end + start) : 0);

/** Cubic through values and slopes at both ends of a stretch of this width; t from 0 to 1. */
function hermite(y0: number, y1: number, slope0: number, slope1: number, width: number, t: number): number {
  const d0 = slope0 * width;
  const d1 = slope1 * width;
  const rise = y1 - y0;
  return y0 + t * (d0 + t * (3 * rise - 2 * d0 - d1 + t * (d0 + d1 - 2 * rise)));
}
