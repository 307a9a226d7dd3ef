/**
 * Cuts the plausible rates into cells with their probabilities. Tables of K stand some 0.6 widths apart; the cells are
 * finer, with the position and width of the hump interpolated between tables. Inside a cell everything is followed
 * along the RATE, not its logarithm, because the probits a lot has left are a straight line in the rate.
 */
import { type InitialViabilityTable, tableLength } from './initial-viability-given-rate';
import type { LikelyRates } from './likely-rates';

/**
 * Knots one after the other in one array, KNOT_LENGTH numbers each, because a posterior is read far more often than
 * looked at: the names below say what stands where.
 */
export type RateCells = Float64Array;
export const KNOT_LENGTH = 14;
/** relative rate of ageing; top and width of the hump of K, probits */
export const RATE = 0;
export const MODE = 1;
export const SCALE = 2;
/** probability of the half cell before and after the knot */
export const MASS_BEFORE = 3;
export const MASS_AFTER = 4;
/** how the density per unit of rate tilts along each half cell: (end - start) / (end + start) */
export const TILT_BEFORE = 5;
export const TILT_AFTER = 6;
/** how far along the rate the middle (in log rate) of the cell after the knot lies, 0 to 1 */
export const MIDDLE_AFTER = 7;
/** the table that gives the shape of K here: where its numbers begin, and its spacings */
export const TABLE_AT = 8;
export const LEFT_SPACING = 9;
export const RIGHT_SPACING = 10;
/** one over the width, and over the spacings: a posterior is read so often that the divisions would be felt */
export const PER_SCALE = 11;
export const PER_LEFT = 12;
export const PER_RIGHT = 13;

const WIDEST_CELL = 0.35; // in log rate: the rate then grows by less than 1.42 across a cell
const WIDEST_CELL_IN_WIDTHS = 0.35;
const IMPORTANT_DROP = 10;

/**
 * Cells from tables.
 *
 * @param likelyRates    tables in rising order of rate, at least two
 * @param sideIntervals  intervals of a table on each side of its top
 * @returns knots with a table of K for each, and the probabilities of the half cells between them, which add to 1
 * Checked through the lot model: tests/domain/longevity/lot-model.test.ts
 */
export function cutRateCells(
  { tables, numbers }: LikelyRates,
  sideIntervals: number,
): { cells: RateCells; tables: Float64Array } {
  const peak = tables.reduce((height, table) => Math.max(height, table.logWeight), Number.NEGATIVE_INFINITY);
  const parts: number[] = [];
  let knots = 1;
  for (let k = 0; k + 1 < tables.length; k += 1) {
    const a = tables[k] as InitialViabilityTable;
    const b = tables[k + 1] as InitialViabilityTable;
    const width = b.logRate - a.logRate;
    const bend = Math.sqrt(width * Math.abs(b.logWeightSlope - a.logWeightSlope));
    const important = Math.max(a.logWeight, b.logWeight) > peak - IMPORTANT_DROP;
    const count = Math.min(
      64,
      Math.max(1, Math.ceil(width / WIDEST_CELL), important ? Math.ceil(bend / WIDEST_CELL_IN_WIDTHS) : 1),
    );
    parts.push(count);
    knots += count;
  }
  const cells = new Float64Array(knots * KNOT_LENGTH);
  const length = tableLength(sideIntervals);
  const shapes = new Float64Array(knots * length);
  const setKnot = (knot: number, a: InitialViabilityTable, b: InitialViabilityTable, t: number): void => {
    const width = b.logRate - a.logRate;
    const leftReach = a.leftSpacing * a.scale * ((b.leftSpacing * b.scale) / (a.leftSpacing * a.scale)) ** t;
    const rightReach = a.rightSpacing * a.scale * ((b.rightSpacing * b.scale) / (a.rightSpacing * a.scale)) ** t;
    const scale = t === 0 ? a.scale : t === 1 ? b.scale : a.scale * (b.scale / a.scale) ** t;
    const at = (knot / KNOT_LENGTH) * length;
    cells[knot + RATE] = Math.exp(a.logRate + t * width);
    cells[knot + MODE] = hermite(a.mode, b.mode, a.modeSlope, b.modeSlope, width, t);
    cells[knot + SCALE] = scale;
    cells[knot + TABLE_AT] = at;
    cells[knot + LEFT_SPACING] = leftReach / scale;
    cells[knot + RIGHT_SPACING] = rightReach / scale;
    cells[knot + PER_SCALE] = 1 / scale;
    cells[knot + PER_LEFT] = scale / leftReach;
    cells[knot + PER_RIGHT] = scale / rightReach;
    blendTables(numbers, sideIntervals, a, b, t, leftReach / scale, rightReach / scale, shapes, at);
  };
  let knot = 0;
  let total = 0;
  setKnot(0, tables[0] as InitialViabilityTable, tables[1] as InitialViabilityTable, 0);
  for (let k = 0; k + 1 < tables.length; k += 1) {
    const a = tables[k] as InitialViabilityTable;
    const b = tables[k + 1] as InitialViabilityTable;
    const width = b.logRate - a.logRate;
    const count = parts[k] as number;
    const cell = width / count;
    const halfStep = Math.exp(0.5 * cell); // the density per unit of rate is that per unit of log rate, over the rate
    let density = Math.exp(a.logWeight - peak);
    for (let i = 1; i <= count; i += 1) {
      const t = i / count;
      const middle = Math.exp(
        hermite(a.logWeight, b.logWeight, a.logWeightSlope, b.logWeightSlope, width, (i - 0.5) / count) - peak,
      );
      const end =
        i === count
          ? Math.exp(b.logWeight - peak)
          : Math.exp(hermite(a.logWeight, b.logWeight, a.logWeightSlope, b.logWeightSlope, width, t) - peak);
      // A parabola through three densities, integrated over each half.
      const left = Math.max(0, (cell / 24) * (5 * density + 8 * middle - end));
      const right = Math.max(0, (cell / 24) * (5 * end + 8 * middle - density));
      cells[knot + MASS_AFTER] = left;
      cells[knot + MIDDLE_AFTER] = 1 / (1 + halfStep);
      cells[knot + TILT_AFTER] = tilt(density, middle / halfStep);
      knot += KNOT_LENGTH;
      setKnot(knot, a, b, t);
      cells[knot + MASS_BEFORE] = right;
      cells[knot + TILT_BEFORE] = tilt(middle, end / halfStep);
      total += left + right;
      density = end;
    }
  }
  for (let i = 0; i < cells.length; i += KNOT_LENGTH) {
    cells[i + MASS_BEFORE] = (cells[i + MASS_BEFORE] as number) / total;
    cells[i + MASS_AFTER] = (cells[i + MASS_AFTER] as number) / total;
  }
  return { cells, tables: shapes };
}

/**
 * The shape of K between two tables: point for point their weighted mean, each side stretched to its own reach, so that a
 * cliff on one side stays as sharp as it is and only moves.
 */
function blendTables(
  numbers: Float64Array,
  side: number,
  a: InitialViabilityTable,
  b: InitialViabilityTable,
  t: number,
  leftSpacing: number,
  rightSpacing: number,
  out: Float64Array,
  at: number,
): void {
  const points = 2 * side + 1;
  const share = 1 - t;
  for (let j = 0; j < points; j += 1) {
    const left = j < side;
    const spacing = left ? leftSpacing : rightSpacing;
    // Density per point, not per unit, is what the two have in common.
    const densityA = (numbers[a.at + j] as number) * (left ? a.leftSpacing : a.rightSpacing);
    const densityB = (numbers[b.at + j] as number) * (left ? b.leftSpacing : b.rightSpacing);
    out[at + j] = (share * densityA + t * densityB) / spacing;
    out[at + points + j] = share * (numbers[a.at + points + j] as number) + t * (numbers[b.at + points + j] as number);
  }
  for (let j = 1; j < points; j += 1) {
    const spacing = j <= side ? leftSpacing : rightSpacing;
    const integral = at + 2 * points + j;
    const rise = 0.5 * ((out[at + points + j - 1] as number) + (out[at + points + j] as number));
    const correction = (spacing * ((out[at + j - 1] as number) - (out[at + j] as number))) / 12;
    out[integral] = (out[integral - 1] as number) + spacing * (rise + correction);
  }
}

const tilt = (start: number, end: number): number => (start + end > 0 ? (end - start) / (end + start) : 0);

/** Cubic through values and slopes at both ends of a stretch of this width; t from 0 to 1. */
function hermite(y0: number, y1: number, slope0: number, slope1: number, width: number, t: number): number {
  const d0 = slope0 * width;
  const d1 = slope1 * width;
  const rise = y1 - y0;
  return y0 + t * (d0 + t * (3 * rise - 2 * d0 - d1 + t * (d0 + d1 - 2 * rise)));
}
