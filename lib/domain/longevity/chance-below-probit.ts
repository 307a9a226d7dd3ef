/**
 * The one figure from which all others of the lot model come: the chance that the lot's viability, in probits, lies
 * below z after D probits of published ageing, that is that K < z + rate x D.
 *
 * For each half cell of rates the chance is the AVERAGE of the distribution function of K along the cell, taken as a
 * difference of its integral: exact for a straight path however steep, where a sum over knots would jump by a whole
 * knot when extrapolating far (then the distribution function is a step as seen along the rate).
 */
import {
  KNOT_LENGTH,
  LEFT_SPACING,
  MASS_AFTER,
  MASS_BEFORE,
  MIDDLE_AFTER,
  MODE,
  RATE,
  type RateCells,
  RIGHT_SPACING,
  SCALE,
  TABLE_AT,
  TILT_AFTER,
  TILT_BEFORE,
} from './rate-cells';

/** A posterior as numbers: the cells of rates, and the tables of K that they point into. */
export type PosteriorShape = {
  cells: RateCells;
  tables: Float64Array;
  /** intervals of each table on either side of its top */
  sideIntervals: number;
};

// Copies, because a constant of another module can cost a call each time it is read.
const STRIDE = KNOT_LENGTH;
const [AT_RATE, AT_MODE, AT_SCALE, AT_TABLE, AT_LEFT, AT_RIGHT] = [
  RATE,
  MODE,
  SCALE,
  TABLE_AT,
  LEFT_SPACING,
  RIGHT_SPACING,
];
const [AT_MASS_BEFORE, AT_MASS_AFTER, AT_TILT_BEFORE, AT_TILT_AFTER, AT_MIDDLE_AFTER] = [
  MASS_BEFORE,
  MASS_AFTER,
  TILT_BEFORE,
  TILT_AFTER,
  MIDDLE_AFTER,
];

// Distribution function and its integral at a point, handed back without an allocation.
let cumulativeHere = 0;
let integralHere = 0;

function look(
  tables: Float64Array,
  at: number,
  leftSpacing: number,
  rightSpacing: number,
  side: number,
  y: number,
): void {
  const last = 2 * side;
  const points = last + 1;
  let i: number;
  let position: number;
  let spacing: number;
  if (y < 0) {
    spacing = leftSpacing;
    position = side + y / spacing;
    if (position <= 0) {
      cumulativeHere = 0;
      integralHere = 0;
      return;
    }
    // Rounding can lift a position just below the top onto it.
    i = position >= side ? side - 1 : position | 0;
  } else {
    spacing = rightSpacing;
    position = side + y / spacing;
    if (position >= last) {
      cumulativeHere = 1;
      integralHere = (tables[at + 2 * points + last] as number) + (position - last) * spacing;
      return;
    }
    i = position | 0;
  }
  const t = position - i;
  const row = at + i;
  const c0 = tables[row + points] as number;
  const f0 = (tables[row] as number) * spacing;
  const f1 = (tables[row + 1] as number) * spacing;
  const rise = (tables[row + points + 1] as number) - c0;
  const square = 3 * rise - 2 * f0 - f1;
  const cube = f0 + f1 - 2 * rise;
  cumulativeHere = c0 + t * (f0 + t * (square + t * cube));
  // The integral of that same cubic, so that an average never leaves the range of what it averages.
  integralHere =
    (tables[row + 2 * points] as number) + spacing * t * (c0 + t * (0.5 * f0 + t * (square / 3 + 0.25 * t * cube)));
}

/** Average of the distribution function along a half cell, weighted by a density with this tilt. */
function tiltedAverage(c0: number, i0: number, y0: number, c1: number, i1: number, y1: number, tilt: number): number {
  const length = y1 - y0;
  const rise = c1 - c0;
  const average = Math.abs(length) > 1e-3 ? (i1 - i0) / length : 0.5 * (c0 + c1);
  if (Math.abs(rise) < 1e-7) return average;
  // g is how far along the cell the rise happens (0 late, 1 early); the last term is the spread of the rise, from
  // evenly spread (1/12) in a smooth cell to a step (0) in a steep one.
  const g = (average - c0) / rise;
  return average + tilt * rise * (g * (1 - g) - 1 / (length * length + 12));
}

/**
 * Chance that probit viability lies below z.
 *
 * @param shape        the lot's posterior
 * @param probitsLost  published ageing D, probits, >= 0, finite
 * @param z            probit viability, finite
 * @returns chance in [0, 1]
 * Checked against dense-grid integration and R: tests/domain/longevity/lot-model.test.ts
 */
export function chanceBelowProbit(
  { cells, tables, sideIntervals: side }: PosteriorShape,
  probitsLost: number,
  z: number,
): number {
  const end = cells.length;
  let chance = 0;
  let middleY = 0; // of the cell before the knot at hand
  let y = (z + (cells[AT_RATE] as number) * probitsLost - (cells[AT_MODE] as number)) / (cells[AT_SCALE] as number);
  for (let knot = 0; knot < end; knot += STRIDE) {
    const next = knot + STRIDE;
    const at = cells[knot + AT_TABLE] as number;
    const left = cells[knot + AT_LEFT] as number;
    const right = cells[knot + AT_RIGHT] as number;
    look(tables, at, left, right, side, y);
    const cumulative = cumulativeHere;
    const integral = integralHere;
    if (knot > 0) {
      look(tables, at, left, right, side, middleY);
      const tilt = cells[knot + AT_TILT_BEFORE] as number;
      const average = tiltedAverage(cumulativeHere, integralHere, middleY, cumulative, integral, y, tilt);
      chance += (cells[knot + AT_MASS_BEFORE] as number) * average;
    }
    if (next < end) {
      const lost = (cells[next + AT_RATE] as number) * probitsLost;
      const nextY = (z + lost - (cells[next + AT_MODE] as number)) / (cells[next + AT_SCALE] as number);
      middleY = y + (cells[knot + AT_MIDDLE_AFTER] as number) * (nextY - y);
      look(tables, at, left, right, side, middleY);
      const tilt = cells[knot + AT_TILT_AFTER] as number;
      const average = tiltedAverage(cumulative, integral, y, cumulativeHere, integralHere, middleY, tilt);
      chance += (cells[knot + AT_MASS_AFTER] as number) * average;
      y = nextY;
    }
  }
  return Math.min(1, Math.max(0, chance));
}

/**
 * Rough mean and spread of probit viability, from the tops and widths of the humps: a place to start a search.
 *
 * @param shape        the lot's posterior
 * @param probitsLost  published ageing D, probits, >= 0, finite
 * @param limit        values beyond +-limit count as +-limit, so that a far tail of rates does not swamp the rest
 * @returns mean and sd, probits; sd > 0
 * Checked only through the searches that it starts: they end in the same place from anywhere
 */
export function roughProbit(
  { cells }: PosteriorShape,
  probitsLost: number,
  limit: number,
): { mean: number; sd: number } {
  let mean = 0;
  let square = 0;
  for (let knot = 0; knot < cells.length; knot += STRIDE) {
    const mass = (cells[knot + AT_MASS_BEFORE] as number) + (cells[knot + AT_MASS_AFTER] as number);
    const free = (cells[knot + AT_MODE] as number) - (cells[knot + AT_RATE] as number) * probitsLost;
    const probit = Math.max(-limit, Math.min(limit, free));
    const scale = cells[knot + AT_SCALE] as number;
    mean += mass * probit;
    square += mass * (probit * probit + scale * scale);
  }
  return { mean, sd: Math.sqrt(Math.max(1e-12, square - mean * mean)) };
}
