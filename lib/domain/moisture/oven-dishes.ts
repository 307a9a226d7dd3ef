/**
 * An oven test of two or more dishes, each perhaps pre-dried by itself: its moisture, and whether the dishes agree.
 *
 * Dishes further apart than two samples may be are to be repeated. Until they are, their mean stands, trusted less.
 */
import { moistureAfterPredrying, moistureFromOven, OVEN_DUPLICATE_TOLERANCE_POINTS } from './oven';

/** One dish, grams; the last two are the seed alone before and after pre-drying, null where it was not pre-dried. */
export interface OvenDish {
  dishG: number;
  dishAndFreshG: number;
  dishAndDryG: number;
  beforePreDryingG: number | null;
  afterPreDryingG: number | null;
}

export interface OvenDishes {
  /** percent of the original fresh weight, dish by dish */
  dishPercents: number[];
  /** their mean */
  moisturePercent: number;
  /** highest minus lowest, points */
  rangePoints: number;
  /** how far apart they may be, points */
  permittedPoints: number;
  verdict: 'agree' | 'repeat';
}

/** 8.3 - 8.1 is a hair more than 0.2 in binary. */
const ROUNDING_SLACK_POINTS = 1e-9;

/**
 * Moisture of an oven test.
 *
 * @param dishes  at least two, grams in the order of moistureFromOven; pre-drying with both weights or neither,
 *                0 < after <= before
 * @returns each dish's moisture, their mean, and whether all lie within 0.2 points (see
 *          OVEN_DUPLICATE_TOLERANCE_POINTS for how sure that figure is; the rule is for two samples, and for more than
 *          two we hold the highest against the lowest)
 * @throws RangeError when there are fewer than two dishes, weights are out of order, or pre-drying has one weight only
 * @see seed-testing rules: formula and marks in oven.ts
 * Checked in tests/domain/moisture/oven-dishes.test.ts
 */
export function ovenDishes(dishes: readonly OvenDish[]): OvenDishes {
  if (dishes.length < 2) throw new RangeError(`ovenDishes: dishes must be at least two, got ${dishes.length}`);
  const dishPercents = dishes.map(dishPercent);
  const rangePoints = Math.max(...dishPercents) - Math.min(...dishPercents);
  return {
    dishPercents,
    moisturePercent: dishPercents.reduce((sum, percent) => sum + percent, 0) / dishPercents.length,
    rangePoints,
    permittedPoints: OVEN_DUPLICATE_TOLERANCE_POINTS,
    verdict: rangePoints <= OVEN_DUPLICATE_TOLERANCE_POINTS + ROUNDING_SLACK_POINTS ? 'agree' : 'repeat',
  };
}

function dishPercent({ dishG, dishAndFreshG, dishAndDryG, beforePreDryingG, afterPreDryingG }: OvenDish): number {
  const inOven = moistureFromOven({ dish: dishG, dishAndFresh: dishAndFreshG, dishAndDry: dishAndDryG });
  if (beforePreDryingG === null && afterPreDryingG === null) return inOven;
  if (beforePreDryingG === null || afterPreDryingG === null) {
    throw new RangeError('ovenDishes: pre-drying must have the weight before and after, got one of them');
  }
  return moistureAfterPredrying({
    // Seed alone on a tared balance: the dish of the formula is none.
    firstStagePercent: moistureFromOven({ dish: 0, dishAndFresh: beforePreDryingG, dishAndDry: afterPreDryingG }),
    secondStagePercent: inOven,
  });
}
