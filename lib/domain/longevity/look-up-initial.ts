/**
 * How likely it is that the initial viability K lies below a point, at one rate of ageing: read from the table of a knot of
 * the posterior by a cubic between its points, whose slopes are the densities there.
 *
 * These are the innermost steps of every figure of the lot model: some hundred looks for one chance.
 */
import { KNOT_LENGTH, LEFT_SPACING, PER_LEFT, PER_RIGHT, RIGHT_SPACING, TABLE_AT } from './posterior-knot';

// Copies, because a constant of another module can cost a call each time it is read.
const STRIDE = KNOT_LENGTH;
const AT_TABLE = TABLE_AT;
const [AT_LEFT, AT_RIGHT, AT_PER_LEFT, AT_PER_RIGHT] = [LEFT_SPACING, RIGHT_SPACING, PER_LEFT, PER_RIGHT];

/**
 * Where the functions below are asked to look, and what they find: y in widths of K from the top; distribution function of K
 * there; its density per width, or its integral. Numbers handed over as arguments or results would each be boxed anew,
 * which at some hundred looks a lot costs as much as the sums themselves.
 */
export const here = new Float64Array(3);
/** where in `here` the three stand */
export const Y = 0;
export const BELOW = 1;
export const MORE = 2;

/**
 * Distribution function and density of K at the table of a knot.
 *
 * @param numbers  the posterior's
 * @param knot     where in them the knot begins
 * @param side     intervals of the table on either side of its top
 * Checked through `chanceBelowProbit`: tests/domain/longevity/lot-model.test.ts
 */
export function look(numbers: Float64Array, knot: number, side: number): void {
  const y = here[Y] as number;
  const last = 2 * side;
  const per = numbers[knot + (y < 0 ? AT_PER_LEFT : AT_PER_RIGHT)] as number;
  const position = side + y * per;
  if (!(position > 0 && position < last)) {
    here[BELOW] = position >= last ? 1 : 0;
    here[MORE] = 0;
    return;
  }
  const spacing = numbers[knot + (y < 0 ? AT_LEFT : AT_RIGHT)] as number;
  // Rounding can lift a position just below the top onto it.
  const i = y < 0 && position >= side ? side - 1 : position | 0;
  const t = position - i;
  const row = (numbers[knot + AT_TABLE] as number) + 3 * i;
  const c0 = numbers[row] as number;
  const f0 = (numbers[row + 1] as number) * spacing;
  const f1 = (numbers[row + 4] as number) * spacing;
  const rise = (numbers[row + 3] as number) - c0;
  const square = 3 * rise - 2 * f0 - f1;
  const cube = f0 + f1 - 2 * rise;
  here[BELOW] = c0 + t * (f0 + t * (square + t * cube));
  here[MORE] = (f0 + t * (2 * square + 3 * t * cube)) * per;
}

/**
 * The same in the middle of a cell: half-way between the tables of the two knots beside it, point for point, each side
 * stretched to its own reach, so that a cliff on one side stays as sharp as it is and only moves.
 *
 * @param numbers  the posterior's
 * @param middle   where in them the middle begins, with a knot before and one after it
 * @param side     intervals of the tables on either side of the top
 * Checked through `chanceBelowProbit`: tests/domain/longevity/lot-model.test.ts
 */
export function lookBetween(numbers: Float64Array, middle: number, side: number): void {
  const y = here[Y] as number;
  const last = 2 * side;
  const per = numbers[middle + (y < 0 ? AT_PER_LEFT : AT_PER_RIGHT)] as number;
  const position = side + y * per;
  if (!(position > 0 && position < last)) {
    here[BELOW] = position >= last ? 1 : 0;
    here[MORE] = 0;
    return;
  }
  const before = middle - STRIDE;
  const after = middle + STRIDE;
  const i = y < 0 && position >= side ? side - 1 : position | 0;
  const t = position - i;
  const rowA = (numbers[before + AT_TABLE] as number) + 3 * i;
  const rowB = (numbers[after + AT_TABLE] as number) + 3 * i;
  // Density per point, not per unit, is what the two have in common.
  const atSpacing = y < 0 ? AT_LEFT : AT_RIGHT;
  const spacingA = 0.5 * (numbers[before + atSpacing] as number);
  const spacingB = 0.5 * (numbers[after + atSpacing] as number);
  const c0 = 0.5 * ((numbers[rowA] as number) + (numbers[rowB] as number));
  const f0 = (numbers[rowA + 1] as number) * spacingA + (numbers[rowB + 1] as number) * spacingB;
  const f1 = (numbers[rowA + 4] as number) * spacingA + (numbers[rowB + 4] as number) * spacingB;
  const rise = 0.5 * ((numbers[rowA + 3] as number) + (numbers[rowB + 3] as number)) - c0;
  const square = 3 * rise - 2 * f0 - f1;
  const cube = f0 + f1 - 2 * rise;
  here[BELOW] = c0 + t * (f0 + t * (square + t * cube));
  here[MORE] = (f0 + t * (2 * square + 3 * t * cube)) * per;
}

/**
 * Distribution function of K at the table of a knot, and its integral from below the table, in widths of K.
 *
 * @param numbers  the posterior's
 * @param knot     where in them the knot begins
 * @param side     intervals of the table on either side of its top
 * Checked through `chanceBelowProbit`: tests/domain/longevity/lot-model.test.ts
 */
export function lookIntegral(numbers: Float64Array, knot: number, side: number): void {
  const y = here[Y] as number;
  const last = 2 * side;
  const row0 = numbers[knot + AT_TABLE] as number;
  const spacing = numbers[knot + (y < 0 ? AT_LEFT : AT_RIGHT)] as number;
  const position = side + y * (numbers[knot + (y < 0 ? AT_PER_LEFT : AT_PER_RIGHT)] as number);
  if (position <= 0) {
    here[BELOW] = 0;
    here[MORE] = 0;
    return;
  }
  if (position >= last) {
    here[BELOW] = 1;
    here[MORE] = (numbers[row0 + 3 * last + 2] as number) + (position - last) * spacing;
    return;
  }
  const i = y < 0 && position >= side ? side - 1 : position | 0;
  const t = position - i;
  const row = row0 + 3 * i;
  const c0 = numbers[row] as number;
  const f0 = (numbers[row + 1] as number) * spacing;
  const f1 = (numbers[row + 4] as number) * spacing;
  const rise = (numbers[row + 3] as number) - c0;
  const square = 3 * rise - 2 * f0 - f1;
  const cube = f0 + f1 - 2 * rise;
  here[BELOW] = c0 + t * (f0 + t * (square + t * cube));
  // The integral of that same cubic, so that an average never leaves the range of what it averages.
  here[MORE] = (numbers[row + 2] as number) + spacing * t * (c0 + t * (0.5 * f0 + t * (square / 3 + 0.25 * t * cube)));
}
