/**
 * The one figure from which all others of the lot model come: the chance that the lot's viability, in probits, lies
 * below z after D probits of published ageing, that is that K < z + rate x D.
 *
 * Over each cell of rates the distribution function of K is averaged: by Simpson's rule where it changes little from end
 * to end. Far ahead it becomes a step as seen along the rate, which a sum over knots would jump by a whole knot; such
 * cells are left to steep-cell.ts.
 */
import { BELOW, here, look, lookBetween, MORE, Y } from './look-up-initial';
import {
  CELL_MASS,
  FIRST_QUARTER,
  FIRST_WEIGHT,
  HALVES_SHARE,
  KNOT_LENGTH,
  MASS_AFTER,
  MASS_BEFORE,
  MODE,
  PER_SCALE,
  RATE,
  SCALE,
  THIRD_QUARTER,
  THIRD_WEIGHT,
} from './posterior-knot';
import { addSteepCell, edgeY, question, steep } from './steep-cell';

/** A posterior as numbers; rate-cells.ts says what stands where. */
export type PosteriorShape = {
  numbers: Float64Array;
  /** where the knots of rate begin; they run to the end */
  knotsAt: number;
  /** intervals of each table on either side of its top */
  sideIntervals: number;
};

// Copies, because what is another module's can cost a call each time it is read.
const STRIDE = KNOT_LENGTH;
const [AT_RATE, AT_MODE, AT_SCALE, AT_PER_SCALE] = [RATE, MODE, SCALE, PER_SCALE];
const [AT_BEFORE, AT_AFTER, AT_CELL_MASS] = [MASS_BEFORE, MASS_AFTER, CELL_MASS];
const [AT_FIRST, AT_THIRD] = [FIRST_QUARTER, THIRD_QUARTER];
const [AT_FIRST_WEIGHT, AT_THIRD_WEIGHT, AT_HALVES] = [FIRST_WEIGHT, THIRD_WEIGHT, HALVES_SHARE];
const [AT_Y, AT_CHANCE, AT_DENSITY] = [Y, BELOW, MORE];
const [looked, added, asked, ends] = [here, steep, question, edgeY];
const [lookAt, lookAtMiddle, addSteep] = [look, lookBetween, addSteepCell];

/** Widths of K from one end of a cell to the other, up to which Simpson's rule over the cell is good enough, and over its halves. */
const GENTLE = 1.2;
const STEEP = 2.4;
/** A cell so improbable is not looked into. */
const LIGHT = 1e-4;

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
  added[0] = 0;
  added[1] = 0;
  added[2] = 0;
  let chance = 0;
  let slope = 0;
  let slopeInLost = 0;
  let y =
    (z + (numbers[knotsAt + AT_RATE] as number) * probitsLost - (numbers[knotsAt + AT_MODE] as number)) *
    (numbers[knotsAt + AT_PER_SCALE] as number);
  looked[AT_Y] = y;
  lookAt(numbers, knotsAt, side);
  let below = looked[AT_CHANCE] as number;
  let density = looked[AT_DENSITY] as number;
  asked[0] = probitsLost;
  asked[1] = z;
  for (let knot = knotsAt; knot < last; knot += 2 * STRIDE) {
    const middle = knot + STRIDE;
    const next = middle + STRIDE;
    const nextRate = numbers[next + AT_RATE] as number;
    const nextY =
      (z + nextRate * probitsLost - (numbers[next + AT_MODE] as number)) * (numbers[next + AT_PER_SCALE] as number);
    looked[AT_Y] = nextY;
    lookAt(numbers, next, side);
    const nextBelow = looked[AT_CHANCE] as number;
    const nextDensity = looked[AT_DENSITY] as number;
    const cellMass = numbers[middle + AT_CELL_MASS] as number;
    if (cellMass < LIGHT || (nextBelow === below && (below === 1 || below === 0))) {
      chance += 0.5 * cellMass * (below + nextBelow);
    } else if (nextY - y > STEEP || y - nextY > STEEP) {
      ends[0] = y;
      ends[4] = nextY;
      addSteep(numbers, knot, side);
    } else {
      const isGentle = nextY - y < GENTLE && y - nextY < GENTLE;
      const middleRate = numbers[middle + AT_RATE] as number;
      const perScale = numbers[middle + AT_PER_SCALE] as number;
      const middleY = (z + middleRate * probitsLost - (numbers[middle + AT_MODE] as number)) * perScale;
      const share = isGentle ? 1 : (numbers[middle + AT_HALVES] as number);
      const mass = share * (numbers[knot + AT_AFTER] as number);
      const middleMass = (isGentle ? 1 : 0.5 * share) * (numbers[middle + AT_BEFORE] as number);
      const nextMass = share * (numbers[next + AT_BEFORE] as number);
      looked[AT_Y] = middleY;
      lookAtMiddle(numbers, middle, side);
      chance += mass * below + middleMass * (looked[AT_CHANCE] as number) + nextMass * nextBelow;
      const weight = mass * density * (numbers[knot + AT_PER_SCALE] as number);
      const middleWeight = middleMass * (looked[AT_DENSITY] as number) * perScale;
      const nextWeight = nextMass * nextDensity * (numbers[next + AT_PER_SCALE] as number);
      slope += weight + middleWeight + nextWeight;
      slopeInLost += weight * (numbers[knot + AT_RATE] as number) + middleWeight * middleRate + nextWeight * nextRate;
      if (!isGentle) {
        const rate1 = numbers[middle + AT_FIRST] as number;
        const per1 = numbers[middle + AT_FIRST + 2] as number;
        const weight1 = numbers[middle + AT_FIRST_WEIGHT] as number;
        const y1 = (z + rate1 * probitsLost - (numbers[middle + AT_FIRST + 1] as number)) * per1;
        looked[AT_Y] = y1;
        lookAt(numbers, knot, side);
        chance += weight1 * (looked[AT_CHANCE] as number);
        const density1 = weight1 * (looked[AT_DENSITY] as number) * per1;
        const rate3 = numbers[middle + AT_THIRD] as number;
        const per3 = numbers[middle + AT_THIRD + 2] as number;
        const weight3 = numbers[middle + AT_THIRD_WEIGHT] as number;
        const y3 = (z + rate3 * probitsLost - (numbers[middle + AT_THIRD + 1] as number)) * per3;
        looked[AT_Y] = y3;
        lookAt(numbers, next, side);
        chance += weight3 * (looked[AT_CHANCE] as number);
        const density3 = weight3 * (looked[AT_DENSITY] as number) * per3;
        slope += density1 + density3;
        slopeInLost += density1 * rate1 + density3 * rate3;
      }
    }
    y = nextY;
    below = nextBelow;
    density = nextDensity;
  }
  out[0] = Math.min(1, Math.max(0, chance + (added[0] as number)));
  out[1] = slope + (added[1] as number);
  out[2] = slopeInLost + (added[2] as number);
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
