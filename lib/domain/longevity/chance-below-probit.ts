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
} from './rate-cells';

/** A posterior as numbers; rate-cells.ts says what stands where. */
export type PosteriorShape = {
  numbers: Float64Array;
  /** where the knots of rate begin; they run to the end */
  knotsAt: number;
  /** knots of rate, odd */
  knots: number;
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
 * Density (per width of K) or integral of the distribution function where it was looked up last, handed back without an
 * allocation: a number in a variable of the module would be boxed anew at each writing.
 */
const here = new Float64Array(2);

/** Distribution function of K at y widths from the top, with its density in `here[0]`. */
function look(numbers: Float64Array, knot: number, side: number, y: number): number {
  const last = 2 * side;
  const per = numbers[knot + (y < 0 ? AT_PER_LEFT : AT_PER_RIGHT)] as number;
  const position = side + y * per;
  if (!(position > 0 && position < last)) {
    here[0] = 0;
    return position >= last ? 1 : 0;
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
  here[0] = (f0 + t * (2 * square + 3 * t * cube)) * per;
  return c0 + t * (f0 + t * (square + t * cube));
}

/**
 * The same in the middle of a cell: half-way between the tables of the two knots beside it, point for point, each side
 * stretched to its own reach, so that a cliff on one side stays as sharp as it is and only moves.
 */
function lookBetween(numbers: Float64Array, middle: number, side: number, y: number): number {
  const last = 2 * side;
  const per = numbers[middle + (y < 0 ? AT_PER_LEFT : AT_PER_RIGHT)] as number;
  const position = side + y * per;
  if (!(position > 0 && position < last)) {
    here[0] = 0;
    return position >= last ? 1 : 0;
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
  here[0] = (f0 + t * (2 * square + 3 * t * cube)) * per;
  return c0 + t * (f0 + t * (square + t * cube));
}

/** Distribution function of K at y widths from the top, with its integral in `here[1]`. */
function lookIntegral(numbers: Float64Array, knot: number, side: number, y: number): number {
  const last = 2 * side;
  const row0 = numbers[knot + AT_TABLE] as number;
  const spacing = numbers[knot + (y < 0 ? AT_LEFT : AT_RIGHT)] as number;
  const position = side + y * (numbers[knot + (y < 0 ? AT_PER_LEFT : AT_PER_RIGHT)] as number);
  if (position <= 0) {
    here[1] = 0;
    return 0;
  }
  if (position >= last) {
    here[1] = (numbers[row0 + 3 * last + 2] as number) + (position - last) * spacing;
    return 1;
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
  // The integral of that same cubic, so that an average never leaves the range of what it averages.
  here[1] = (numbers[row + 2] as number) + spacing * t * (c0 + t * (0.5 * f0 + t * (square / 3 + 0.25 * t * cube)));
  return c0 + t * (f0 + t * (square + t * cube));
}

const steep = new Float64Array(3);

/**
 * Adds what one quarter of a cell gives to `steep`: from y0 to y1, where the distribution function is c0 and c1 and its
 * integral i0 and i1.
 */
function addQuarter(
  y0: number,
  c0: number,
  i0: number,
  y1: number,
  c1: number,
  i1: number,
  mass: number,
  tilt: number,
): number {
  const rise = c1 - c0;
  const length = y1 - y0;
  if (rise < 1e-7 && rise > -1e-7) {
    steep[0] = (steep[0] as number) + 0.5 * mass * (c0 + c1);
    return 0;
  }
  const perLength = 1 / length;
  const average = (i1 - i0) * perLength;
  // With g how far along the quarter the rise happens (0 late, 1 early) this adds tilt x rise x (g (1 - g) - s), where s,
  // the spread of the rise, goes from evenly spread (1/12) in a smooth quarter to a step (0) in a steep one.
  const early = average - c0;
  const steepness = length * length + 12;
  const lean = early - (early * early * steepness + rise * rise) / (rise * steepness);
  steep[0] = (steep[0] as number) + mass * (average + tilt * lean);
  return mass * rise * perLength;
}

/** A whole cell, quarter by quarter: two seen from the table before it, two from the one after. Adds to `steep`. */
function addSteepCell(
  numbers: Float64Array,
  knot: number,
  side: number,
  probitsLost: number,
  z: number,
  y0: number,
  y4: number,
): void {
  const middle = knot + STRIDE;
  const next = middle + STRIDE;
  const rate1 = numbers[middle + AT_FIRST] as number;
  const rate3 = numbers[middle + AT_THIRD] as number;
  const per1 = numbers[middle + AT_FIRST + 2] as number;
  const per3 = numbers[middle + AT_THIRD + 2] as number;
  const y1 = (z + rate1 * probitsLost - (numbers[middle + AT_FIRST + 1] as number)) * per1;
  const y2 =
    (z + (numbers[middle + AT_RATE] as number) * probitsLost - (numbers[middle + AT_MODE] as number)) *
    (numbers[middle + AT_PER_SCALE] as number);
  const y3 = (z + rate3 * probitsLost - (numbers[middle + AT_THIRD + 1] as number)) * per3;
  const mass = middle + AT_QUARTER_MASS;
  const tilt = middle + AT_QUARTER_TILT;
  const c0 = lookIntegral(numbers, knot, side, y0);
  const i0 = here[1] as number;
  const c1 = lookIntegral(numbers, knot, side, y1);
  const i1 = here[1] as number;
  const c2 = lookIntegral(numbers, knot, side, y2);
  let density = addQuarter(y0, c0, i0, y1, c1, i1, numbers[mass] as number, numbers[tilt] as number);
  density += addQuarter(
    y1,
    c1,
    i1,
    y2,
    c2,
    here[1] as number,
    numbers[mass + 1] as number,
    numbers[tilt + 1] as number,
  );
  density *= per1;
  const d2 = lookIntegral(numbers, next, side, y2);
  const j2 = here[1] as number;
  const d3 = lookIntegral(numbers, next, side, y3);
  const j3 = here[1] as number;
  const d4 = lookIntegral(numbers, next, side, y4);
  let densityAfter = addQuarter(
    y3,
    d3,
    j3,
    y4,
    d4,
    here[1] as number,
    numbers[mass + 3] as number,
    numbers[tilt + 3] as number,
  );
  densityAfter += addQuarter(y2, d2, j2, y3, d3, j3, numbers[mass + 2] as number, numbers[tilt + 2] as number);
  densityAfter *= per3;
  steep[1] = (steep[1] as number) + density + densityAfter;
  steep[2] = (steep[2] as number) + density * rate1 + densityAfter * rate3;
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
  let below = look(numbers, knotsAt, side, y);
  let density = here[0] as number;
  for (let knot = knotsAt; knot < last; knot += 2 * STRIDE) {
    const middle = knot + STRIDE;
    const next = middle + STRIDE;
    const nextRate = numbers[next + AT_RATE] as number;
    const nextY =
      (z + nextRate * probitsLost - (numbers[next + AT_MODE] as number)) * (numbers[next + AT_PER_SCALE] as number);
    const nextBelow = look(numbers, next, side, nextY);
    const nextDensity = here[0] as number;
    const cellMass = numbers[middle + AT_CELL_MASS] as number;
    if (cellMass < LIGHT || (nextBelow === below && (below === 1 || below === 0))) {
      chance += 0.5 * cellMass * (below + nextBelow);
    } else if (nextY - y > STEEP || y - nextY > STEEP) {
      addSteepCell(numbers, knot, side, probitsLost, z, y, nextY);
    } else {
      const isGentle = nextY - y < GENTLE && y - nextY < GENTLE;
      const middleRate = numbers[middle + AT_RATE] as number;
      const perScale = numbers[middle + AT_PER_SCALE] as number;
      const middleY = (z + middleRate * probitsLost - (numbers[middle + AT_MODE] as number)) * perScale;
      const share = isGentle ? 1 : (numbers[middle + AT_HALVES] as number);
      const mass = share * (numbers[knot + AT_AFTER] as number);
      const middleMass = (isGentle ? 1 : 0.5 * share) * (numbers[middle + AT_BEFORE] as number);
      const nextMass = share * (numbers[next + AT_BEFORE] as number);
      chance += mass * below + middleMass * lookBetween(numbers, middle, side, middleY) + nextMass * nextBelow;
      const weight = mass * density * (numbers[knot + AT_PER_SCALE] as number);
      const middleWeight = middleMass * (here[0] as number) * perScale;
      const nextWeight = nextMass * nextDensity * (numbers[next + AT_PER_SCALE] as number);
      slope += weight + middleWeight + nextWeight;
      slopeInLost += weight * (numbers[knot + AT_RATE] as number) + middleWeight * middleRate + nextWeight * nextRate;
      if (!isGentle) {
        const rate1 = numbers[middle + AT_FIRST] as number;
        const per1 = numbers[middle + AT_FIRST + 2] as number;
        const weight1 = numbers[middle + AT_FIRST_WEIGHT] as number;
        const y1 = (z + rate1 * probitsLost - (numbers[middle + AT_FIRST + 1] as number)) * per1;
        chance += weight1 * look(numbers, knot, side, y1);
        const density1 = weight1 * (here[0] as number) * per1;
        const rate3 = numbers[middle + AT_THIRD] as number;
        const per3 = numbers[middle + AT_THIRD + 2] as number;
        const weight3 = numbers[middle + AT_THIRD_WEIGHT] as number;
        const y3 = (z + rate3 * probitsLost - (numbers[middle + AT_THIRD + 1] as number)) * per3;
        chance += weight3 * look(numbers, next, side, y3);
        const density3 = weight3 * (here[0] as number) * per3;
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
