/**
 * A cell of rates across which the chance that viability lies below a point jumps by much: far ahead, a small difference of
 * rate is a large one of viability, and seen along the rate the distribution function of K is nearly a step. Then the
 * AVERAGE of that function along each quarter of the cell is taken, as a difference of its integral, exact for a straight
 * path however steep.
 */
import { BELOW, here, lookIntegral, MORE, Y } from './look-up-initial';
import {
  FIRST_QUARTER,
  KNOT_LENGTH,
  MODE,
  PER_SCALE,
  QUARTER_MASS,
  QUARTER_TILT,
  RATE,
  THIRD_QUARTER,
} from './posterior-knot';

// Copies, because what is another module's can cost a call each time it is read.
const STRIDE = KNOT_LENGTH;
const [AT_RATE, AT_MODE, AT_PER_SCALE] = [RATE, MODE, PER_SCALE];
const [AT_QUARTER_MASS, AT_QUARTER_TILT] = [QUARTER_MASS, QUARTER_TILT];
const [AT_FIRST, AT_THIRD] = [FIRST_QUARTER, THIRD_QUARTER];
const [AT_Y, AT_BELOW, AT_INTEGRAL] = [Y, BELOW, MORE];
const [looked, lookAt] = [here, lookIntegral];

/** What the steep cells of one question add up to: chance, its slope in z, its slope in D. */
export const steep = new Float64Array(3);
/** The ends of the quarters of a steep cell: y, and what `lookIntegral` finds there. */
export const edgeY = new Float64Array(5);
const edgeBelow = new Float64Array(5);
const edgeIntegral = new Float64Array(5);
/** What a steep cell is asked with: ageing D, and z. */
export const question = new Float64Array(2);

/**
 * Adds a whole cell to `steep`, quarter by quarter: two seen from the table before it, two from the one after. The question
 * and the outer ends of `edgeY` must be in place.
 *
 * @param numbers  the posterior's
 * @param knot     where in them the knot before the cell begins
 * @param side     intervals of each table on either side of its top
 * Checked through `chanceBelowProbit`: tests/domain/longevity/lot-model.test.ts
 */
export function addSteepCell(numbers: Float64Array, knot: number, side: number): void {
  const middle = knot + STRIDE;
  const next = middle + STRIDE;
  const probitsLost = question[0] as number;
  const z = question[1] as number;
  const rate1 = numbers[middle + AT_FIRST] as number;
  const rate3 = numbers[middle + AT_THIRD] as number;
  const per1 = numbers[middle + AT_FIRST + 2] as number;
  const per3 = numbers[middle + AT_THIRD + 2] as number;
  // The outer ends are in place.
  edgeY[1] = (z + rate1 * probitsLost - (numbers[middle + AT_FIRST + 1] as number)) * per1;
  edgeY[2] =
    (z + (numbers[middle + AT_RATE] as number) * probitsLost - (numbers[middle + AT_MODE] as number)) *
    (numbers[middle + AT_PER_SCALE] as number);
  edgeY[3] = (z + rate3 * probitsLost - (numbers[middle + AT_THIRD + 1] as number)) * per3;
  addHalf(numbers, knot, side, 0, middle);
  const before = half[0] as number;
  addHalf(numbers, next, side, 2, middle);
  const density1 = before * per1;
  const density3 = (half[0] as number) * per3;
  steep[1] = (steep[1] as number) + density1 + density3;
  steep[2] = (steep[2] as number) + density1 * rate1 + density3 * rate3;
}

/** The density, per width of K, that `addHalf` found. */
const half = new Float64Array(1);

/** Adds two quarters of a cell, the `first` and the one after it, both seen from the table of one knot. */
function addHalf(numbers: Float64Array, knot: number, side: number, first: number, middle: number): void {
  for (let edge = first; edge <= first + 2; edge += 1) {
    looked[AT_Y] = edgeY[edge] as number;
    lookAt(numbers, knot, side);
    edgeBelow[edge] = looked[AT_BELOW] as number;
    edgeIntegral[edge] = looked[AT_INTEGRAL] as number;
  }
  let chance = 0;
  let density = 0;
  for (let quarter = first; quarter < first + 2; quarter += 1) {
    const mass = numbers[middle + AT_QUARTER_MASS + quarter] as number;
    const below = edgeBelow[quarter] as number;
    const rise = (edgeBelow[quarter + 1] as number) - below;
    if (rise < 1e-7 && rise > -1e-7) {
      chance += mass * (below + 0.5 * rise);
      continue;
    }
    const length = (edgeY[quarter + 1] as number) - (edgeY[quarter] as number);
    const perLength = 1 / length;
    // With g how far along the quarter the rise happens (0 late, 1 early) the tilt adds tilt x rise x (g (1 - g) - s), where s,
    // the spread of the rise, goes from evenly spread (1/12) in a smooth quarter to a step (0) in a steep one.
    const early = ((edgeIntegral[quarter + 1] as number) - (edgeIntegral[quarter] as number)) * perLength - below;
    const steepness = length * length + 12;
    const lean = early - (early * early * steepness + rise * rise) / (rise * steepness);
    chance += mass * (below + early + (numbers[middle + AT_QUARTER_TILT + quarter] as number) * lean);
    density += mass * rise * perLength;
  }
  steep[0] = (steep[0] as number) + chance;
  half[0] = density;
}
