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
  PER_LEFT,
  PER_RIGHT,
  PER_SCALE,
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
const [AT_PER_SCALE, AT_PER_LEFT, AT_PER_RIGHT] = [PER_SCALE, PER_LEFT, PER_RIGHT];
const [AT_MASS_BEFORE, AT_MASS_AFTER, AT_TILT_BEFORE, AT_TILT_AFTER, AT_MIDDLE_AFTER] = [
  MASS_BEFORE,
  MASS_AFTER,
  TILT_BEFORE,
  TILT_AFTER,
  MIDDLE_AFTER,
];

/**
 * Distribution function and its integral where `look` looked last, handed back without an allocation: a number in a
 * variable of the module would be boxed anew at each writing.
 */
const here = new Float64Array(2);

function look(cells: RateCells, knot: number, tables: Float64Array, side: number, y: number): void {
  const last = 2 * side;
  const points = last + 1;
  const at = cells[knot + AT_TABLE] as number;
  const spacing = cells[knot + (y < 0 ? AT_LEFT : AT_RIGHT)] as number;
  const position = side + y * (cells[knot + (y < 0 ? AT_PER_LEFT : AT_PER_RIGHT)] as number);
  if (position <= 0) {
    here[0] = 0;
    here[1] = 0;
    return;
  }
  if (position >= last) {
    here[0] = 1;
    here[1] = (tables[at + 2 * points + last] as number) + (position - last) * spacing;
    return;
  }
  // Rounding can lift a position just below the top onto it.
  const i = y < 0 && position >= side ? side - 1 : position | 0;
  const t = position - i;
  const row = at + i;
  const c0 = tables[row + points] as number;
  const f0 = (tables[row] as number) * spacing;
  const f1 = (tables[row + 1] as number) * spacing;
  const rise = (tables[row + points + 1] as number) - c0;
  const square = 3 * rise - 2 * f0 - f1;
  const cube = f0 + f1 - 2 * rise;
  here[0] = c0 + t * (f0 + t * (square + t * cube));
  // The integral of that same cubic, so that an average never leaves the range of what it averages.
  here[1] =
    (tables[row + 2 * points] as number) + spacing * t * (c0 + t * (0.5 * f0 + t * (square / 3 + 0.25 * t * cube)));
}

/**
 * Average of the distribution function along a half cell, from y0 to y1, weighted by a density with this tilt.
 * Distribution function and integral at y0 are given; those at y1 are where `look` left them.
 */
function tiltedAverage(c0: number, i0: number, y0: number, y1: number, tilt: number): number {
  const c1 = here[0] as number;
  const length = y1 - y0;
  const rise = c1 - c0;
  const average = Math.abs(length) > 1e-3 ? ((here[1] as number) - i0) / length : 0.5 * (c0 + c1);
  if (Math.abs(rise) < 1e-7) return average;
  // With g how far along the cell the rise happens (0 late, 1 early) this is average + tilt x rise x (g (1 - g) - s), where
  // s, the spread of the rise, goes from evenly spread (1/12) in a smooth cell to a step (0) in a steep one.
  const early = average - c0;
  const steepness = length * length + 12;
  return average + tilt * (early - (early * early * steepness + rise * rise) / (rise * steepness));
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
  const last = cells.length - STRIDE;
  let chance = 0;
  let lookedHere = false; // whether `here` holds what the table of this knot says at y
  let y = (z + (cells[AT_RATE] as number) * probitsLost - (cells[AT_MODE] as number)) * (cells[AT_PER_SCALE] as number);
  for (let knot = 0; knot < last; knot += STRIDE) {
    const next = knot + STRIDE;
    const lost = (cells[next + AT_RATE] as number) * probitsLost;
    const nextY = (z + lost - (cells[next + AT_MODE] as number)) * (cells[next + AT_PER_SCALE] as number);
    const massHere = cells[knot + AT_MASS_AFTER] as number;
    const massNext = cells[next + AT_MASS_BEFORE] as number;
    if (y >= side * (cells[knot + AT_RIGHT] as number) && nextY >= side * (cells[next + AT_RIGHT] as number)) {
      chance += massHere + massNext; // wholly below z: many cells need no look at their tables
      lookedHere = false;
    } else if (y <= -side * (cells[knot + AT_LEFT] as number) && nextY <= -side * (cells[next + AT_LEFT] as number)) {
      lookedHere = false;
    } else {
      const middleY = y + (cells[knot + AT_MIDDLE_AFTER] as number) * (nextY - y);
      if (!lookedHere) look(cells, knot, tables, side, y);
      let cumulative = here[0] as number;
      let integral = here[1] as number;
      look(cells, knot, tables, side, middleY);
      chance += massHere * tiltedAverage(cumulative, integral, y, middleY, cells[knot + AT_TILT_AFTER] as number);
      look(cells, next, tables, side, middleY);
      cumulative = here[0] as number;
      integral = here[1] as number;
      look(cells, next, tables, side, nextY);
      chance += massNext * tiltedAverage(cumulative, integral, middleY, nextY, cells[next + AT_TILT_BEFORE] as number);
      lookedHere = true;
    }
    y = nextY;
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
