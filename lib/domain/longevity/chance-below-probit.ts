/**
 * The one figure from which all others of the lot model come: the chance that the lot's viability, in probits, lies
 * below z after D probits of published ageing, that is that K < z + rate x D.
 *
 * Over each cell of rates the distribution function of K is averaged: by Simpson's rule where it changes little from end
 * to end. Far ahead it becomes a step as seen along the rate, which a sum over knots would jump by a whole knot; there
 * the AVERAGE along each quarter of the cell is taken as a difference of the function's integral, exact for a straight path however steep.
 */
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

/** A posterior as numbers; rate-cells.ts says what stands where. */
export type PosteriorShape = {
  numbers: Float64Array;
  /** where the knots of rate begin; they run to the end */
  knotsAt: number;
  /** intervals of each table on either side of its top */
  sideIntervals: number;
};

// Copies, because a constant of another module can cost a call each time it is read.
const STRIDE = KNOT_LENGTH;
const [AT_RATE, AT_MODE, AT_SCALE, AT_PER_SCALE, AT_TABLE] = [RATE, MODE, SCALE, PER_SCALE, TABLE_AT];
const [AT_LEFT, AT_RIGHT, AT_PER_LEFT, AT_PER_RIGHT] = [LEFT_SPACING, RIGHT_SPACING, PER_LEFT, PER_RIGHT];
const [AT_BEFORE, AT_AFTER, AT_CELL_MASS] = [MASS_BEFORE, MASS_AFTER, CELL_MASS];
const [AT_QUARTER_MASS, AT_QUARTER_TILT] = [QUARTER_MASS, QUARTER_TILT];
const [AT_FIRST, AT_THIRD] = [FIRST_QUARTER, THIRD_QUARTER];
const [AT_FIRST_WEIGHT, AT_THIRD_WEIGHT, AT_HALVES] = [FIRST_WEIGHT, THIRD_WEIGHT, HALVES_SHARE];

/** Widths of K from one end of a cell to the other, up to which Simpson's rule over the cell is good enough, and over its halves. */
const GENTLE = 1.2;
const STEEP = 2.4;
/** A cell so improbable is not looked into. */
const LIGHT = 1e-4;

/**
 * Where the functions below are asked to look, and what they find: y in widths of K from the top; distribution function of K
 * there; its density per width, or its integral. Numbers handed over as arguments or results would each be boxed anew,
 * which at some hundred looks a lot costs as much as the sums themselves.
 */
const here = new Float64Array(3);
const [Y, BELOW, MORE] = [0, 1, 2];

/** Distribution function and density of K at the table of a knot. */
function look(numbers: Float64Array, knot: number, side: number): void {
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
 */
function lookBetween(numbers: Float64Array, middle: number, side: number): void {
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

/** Distribution function of K at the table of a knot, and its integral. */
function lookIntegral(numbers: Float64Array, knot: number, side: number): void {
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

/** What the steep cells of one question add up to: chance, its slope in z, its slope in D. */
const steep = new Float64Array(3);
/** The ends of the quarters of a steep cell: y, and what `lookIntegral` finds there. */
const edgeY = new Float64Array(5);
const edgeBelow = new Float64Array(5);
const edgeIntegral = new Float64Array(5);
/** What a steep cell is asked with: ageing D, and z. */
const question = new Float64Array(2);

/** Adds a whole cell, quarter by quarter: two seen from the table before it, two from the one after. */
function addSteepCell(numbers: Float64Array, knot: number, side: number): void {
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
    here[Y] = edgeY[edge] as number;
    lookIntegral(numbers, knot, side);
    edgeBelow[edge] = here[BELOW] as number;
    edgeIntegral[edge] = here[MORE] as number;
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

/**
 * Chance that probit viability lies below z, and how fast it changes.
 *
 * @param shape        the lot's posterior
 * @param probitsLost  published ageing D, probits, >= 0, finite
 * @param z            probit viability, finite
 * @param out          receives the chance, its slope in z (the density of probit viability), and its slope in D. The slopes are
 *                     good to a few per cent: they steer searches
 * Checked against dense-grid integration and R: tests/domain/longevity/lot-model.test.ts
 */
export function chanceAndSlopes(
  { numbers, knotsAt, sideIntervals: side }: PosteriorShape,
  probitsLost: number,
  z: number,
  out: Float64Array,
): void {
  const last = numbers.length - STRIDE;
  steep[0] = 0;
  steep[1] = 0;
  steep[2] = 0;
  let chance = 0;
  let slope = 0;
  let slopeInLost = 0;
  let y =
    (z + (numbers[knotsAt + AT_RATE] as number) * probitsLost - (numbers[knotsAt + AT_MODE] as number)) *
    (numbers[knotsAt + AT_PER_SCALE] as number);
  here[Y] = y;
  look(numbers, knotsAt, side);
  let below = here[BELOW] as number;
  let density = here[MORE] as number;
  question[0] = probitsLost;
  question[1] = z;
  for (let knot = knotsAt; knot < last; knot += 2 * STRIDE) {
    const middle = knot + STRIDE;
    const next = middle + STRIDE;
    const nextRate = numbers[next + AT_RATE] as number;
    const nextY =
      (z + nextRate * probitsLost - (numbers[next + AT_MODE] as number)) * (numbers[next + AT_PER_SCALE] as number);
    here[Y] = nextY;
    look(numbers, next, side);
    const nextBelow = here[BELOW] as number;
    const nextDensity = here[MORE] as number;
    const cellMass = numbers[middle + AT_CELL_MASS] as number;
    if (cellMass < LIGHT || (nextBelow === below && (below === 1 || below === 0))) {
      chance += 0.5 * cellMass * (below + nextBelow);
    } else if (nextY - y > STEEP || y - nextY > STEEP) {
      edgeY[0] = y;
      edgeY[4] = nextY;
      addSteepCell(numbers, knot, side);
    } else {
      const isGentle = nextY - y < GENTLE && y - nextY < GENTLE;
      const middleRate = numbers[middle + AT_RATE] as number;
      const perScale = numbers[middle + AT_PER_SCALE] as number;
      const middleY = (z + middleRate * probitsLost - (numbers[middle + AT_MODE] as number)) * perScale;
      const share = isGentle ? 1 : (numbers[middle + AT_HALVES] as number);
      const mass = share * (numbers[knot + AT_AFTER] as number);
      const middleMass = (isGentle ? 1 : 0.5 * share) * (numbers[middle + AT_BEFORE] as number);
      const nextMass = share * (numbers[next + AT_BEFORE] as number);
      here[Y] = middleY;
      lookBetween(numbers, middle, side);
      chance += mass * below + middleMass * (here[BELOW] as number) + nextMass * nextBelow;
      const weight = mass * density * (numbers[knot + AT_PER_SCALE] as number);
      const middleWeight = middleMass * (here[MORE] as number) * perScale;
      const nextWeight = nextMass * nextDensity * (numbers[next + AT_PER_SCALE] as number);
      slope += weight + middleWeight + nextWeight;
      slopeInLost += weight * (numbers[knot + AT_RATE] as number) + middleWeight * middleRate + nextWeight * nextRate;
      if (!isGentle) {
        const rate1 = numbers[middle + AT_FIRST] as number;
        const per1 = numbers[middle + AT_FIRST + 2] as number;
        const weight1 = numbers[middle + AT_FIRST_WEIGHT] as number;
        const y1 = (z + rate1 * probitsLost - (numbers[middle + AT_FIRST + 1] as number)) * per1;
        here[Y] = y1;
        look(numbers, knot, side);
        chance += weight1 * (here[BELOW] as number);
        const density1 = weight1 * (here[MORE] as number) * per1;
        const rate3 = numbers[middle + AT_THIRD] as number;
        const per3 = numbers[middle + AT_THIRD + 2] as number;
        const weight3 = numbers[middle + AT_THIRD_WEIGHT] as number;
        const y3 = (z + rate3 * probitsLost - (numbers[middle + AT_THIRD + 1] as number)) * per3;
        here[Y] = y3;
        look(numbers, next, side);
        chance += weight3 * (here[BELOW] as number);
        const density3 = weight3 * (here[MORE] as number) * per3;
        slope += density1 + density3;
        slopeInLost += density1 * rate1 + density3 * rate3;
      }
    }
    y = nextY;
    below = nextBelow;
    density = nextDensity;
  }
  out[0] = Math.min(1, Math.max(0, chance + (steep[0] as number)));
  out[1] = slope + (steep[1] as number);
  out[2] = slopeInLost + (steep[2] as number);
}

const answer = new Float64Array(3);

/**
 * Chance that probit viability lies below z.
 *
 * @param shape        the lot's posterior
 * @param probitsLost  published ageing D, probits, >= 0, finite
 * @param z            probit viability, finite
 * @returns chance in [0, 1]
 * Checked against dense-grid integration and R: tests/domain/longevity/lot-model.test.ts
 */
export function chanceBelowProbit(shape: PosteriorShape, probitsLost: number, z: number): number {
  chanceAndSlopes(shape, probitsLost, z, answer);
  return answer[0] as number;
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
  { numbers, knotsAt }: PosteriorShape,
  probitsLost: number,
  limit: number,
): { mean: number; sd: number } {
  let mean = 0;
  let square = 0;
  for (let knot = knotsAt; knot < numbers.length; knot += STRIDE) {
    const mass = (numbers[knot + AT_BEFORE] as number) + (numbers[knot + AT_AFTER] as number);
    const free = (numbers[knot + AT_MODE] as number) - (numbers[knot + AT_RATE] as number) * probitsLost;
    const probit = Math.max(-limit, Math.min(limit, free));
    const scale = numbers[knot + AT_SCALE] as number;
    mean += mass * probit;
    square += mass * (probit * probit + scale * scale);
  }
  return { mean, sd: Math.sqrt(Math.max(1e-12, square - mean * mean)) };
}
