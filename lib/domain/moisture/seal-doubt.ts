/**
 * Whether a sealed packet's moisture tests contradict what it was packed at: then its seal may leak, or one of the two
 * is wrong.
 */
import type { CalendarDate } from '../calendar/calendar-date';
import { isHermetic } from '../stock/containers';
import type { Placement } from '../stock/storage-history';
import { type PacketMoistureTest, testsWithin, weightedMean } from './stay-moisture';

export interface SealDoubt {
  /** where the stay began */
  stayFrom: CalendarDate;
  /** what was written at packing, or what earlier tests of the stay found; percent of fresh weight */
  before: { kind: 'written' } | { kind: 'tested'; testedOn: CalendarDate };
  beforePercent: number;
  /** the latest test of the stay */
  test: PacketMoistureTest;
  differencePoints: number;
  permittedPoints: number;
}

/** A written moisture comes from a test somebody made before: it is taken to be as sure as an oven's. Our own choice. */
export const WRITTEN_STANDARD_POINTS = 0.2;
/** Standard deviations of the difference that chance is granted: about 1 in 20 by chance alone. */
const PERMITTED_STANDARD_DEVIATIONS = 2;
/** Binary rounding is no water. */
const ROUNDING_SLACK_POINTS = 1e-9;

/**
 * How far two moistures of the same seed may be apart: twice the standard deviation of their difference.
 *
 * @param firstPoints   standard deviation of the one, points, > 0
 * @param secondPoints  of the other
 * @returns points, > 0: 0.57 between a written moisture and an oven, 1.08 and a meter, 2.04 and the air over the seed
 * @throws RangeError when a standard deviation is not above 0
 * @see general method; two standard deviations are our own choice
 * Checked in tests/domain/moisture/seal-doubt.test.ts
 */
export function permittedDifference(firstPoints: number, secondPoints: number): number {
  for (const [name, value] of Object.entries({ firstPoints, secondPoints })) {
    if (!(value > 0 && Number.isFinite(value))) {
      throw new RangeError(`permittedDifference: ${name} must be above 0, got ${value}`);
    }
  }
  return PERMITTED_STANDARD_DEVIATIONS * Math.hypot(firstPoints, secondPoints);
}

/**
 * The doubt that a packet's present stay leaves, if any. The latest test speaks: where it agrees again, there is none.
 * A test of the day on which the stay began says nothing of the seal: nobody knows whether it came before or after.
 *
 * @param placements  of the packet, in the order they happened
 * @param tests       of the packet, in any order, corrected ones left out
 * @returns null where the present stay is open, untested, or its latest test agrees with the moisture it was packed at
 *          (where none was written: with the mean of the stay's earlier tests)
 * @throws RangeError when a container is unknown
 * Checked in tests/domain/moisture/seal-doubt.test.ts
 */
export function sealDoubt(placements: readonly Placement[], tests: readonly PacketMoistureTest[]): SealDoubt | null {
  const stay = placements.at(-1);
  if (stay === undefined || !isHermetic(stay.container)) return null;
  const within = testsWithin(tests, stay.from, undefined);
  const test = within.at(-1);
  if (test === undefined || test.testedOn === stay.from) return null;
  const earlier = within.slice(0, -1);
  const lastEarlier = earlier.at(-1);
  if (stay.moisturePercent === null && lastEarlier === undefined) return null;
  const beforePercent = stay.moisturePercent ?? weightedMean(earlier);
  const beforePoints = stay.moisturePercent === null ? standardPointsOfMean(earlier) : WRITTEN_STANDARD_POINTS;
  const differencePoints = test.moisturePercent - beforePercent;
  const permittedPoints = permittedDifference(beforePoints, test.standardPoints);
  if (Math.abs(differencePoints) <= permittedPoints + ROUNDING_SLACK_POINTS) return null;
  return {
    stayFrom: stay.from,
    before:
      stay.moisturePercent === null && lastEarlier !== undefined
        ? { kind: 'tested', testedOn: lastEarlier.testedOn }
        : { kind: 'written' },
    beforePercent,
    test,
    differencePoints,
    permittedPoints,
  };
}

/** Of a mean weighted by 1 / variance. */
function standardPointsOfMean(tests: readonly PacketMoistureTest[]): number {
  return 1 / Math.sqrt(tests.reduce((sum, { standardPoints }) => sum + 1 / standardPoints ** 2, 0));
}
