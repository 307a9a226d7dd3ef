/**
 * How sure an oven moisture is, from what the balance can show and from its duplicates.
 *
 * Each reading is rounded to the balance's smallest step d: an error evenly spread over d, with standard deviation
 * d / sqrt(12). First-order propagation through 100 (M2 - M3) / (M2 - M1). A drift of the balance, damp picked up while
 * cooling and seed that is not all alike are not in it: the duplicates show those.
 */
import { moistureFromOven } from './oven';

/** Standard deviation of an error spread evenly over one step. */
const STEP_TO_STANDARD = 1 / Math.sqrt(12);

export type OvenUncertainty = {
  /** percent of fresh weight */
  moisturePercent: number;
  /** one standard deviation, points of moisture */
  standardPoints: number;
  /** every reading off by half a step in the worst direction, points of moisture */
  largestPoints: number;
};

/**
 * Moisture with the uncertainty that the balance alone leaves.
 *
 * @param dish          empty dish with lid (M1), grams, as moistureFromOven
 * @param dishAndFresh  with the seed before drying (M2), grams
 * @param dishAndDry    with the seed after drying (M3), grams
 * @param stepG         smallest step of the balance, grams, > 0: 0.001 for three decimals
 * @returns moisture, one standard deviation and the largest error, both in points
 * @throws RangeError when the weights are out of order or the step is not > 0
 * @see propagation of uncertainty to first order (general method)
 * Checked against R (`deriv` for the slopes, and a million simulated weighings): tests/golden/oven-uncertainty.json
 */
export function ovenUncertainty({
  dish,
  dishAndFresh,
  dishAndDry,
  stepG,
}: {
  dish: number;
  dishAndFresh: number;
  dishAndDry: number;
  stepG: number;
}): OvenUncertainty {
  const moisturePercent = moistureFromOven({ dish, dishAndFresh, dishAndDry });
  if (!(stepG > 0 && stepG < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`ovenUncertainty: stepG must be a finite number > 0, got ${stepG}`);
  }
  const fresh = dishAndFresh - dish;
  const slopes = [moisturePercent / fresh, (100 - moisturePercent) / fresh, -100 / fresh];
  return {
    moisturePercent,
    standardPoints: stepG * STEP_TO_STANDARD * Math.hypot(...slopes),
    largestPoints: (stepG / 2) * slopes.reduce((sum, slope) => sum + Math.abs(slope), 0),
  };
}

/**
 * Uncertainty of a two-stage moisture, from that of its stages.
 *
 * @param firstStage   pre-drying: percent lost and its standard deviation in points
 * @param secondStage  oven: the same
 * @returns one standard deviation of S1 + S2 - S1 S2 / 100, points
 * @throws RangeError when a stage is outside [0, 100) or a deviation is negative
 * Checked in tests/domain/moisture/oven-uncertainty.test.ts and against R's `deriv`
 */
export function twoStageUncertainty({
  firstStage,
  secondStage,
}: {
  firstStage: { percent: number; standardPoints: number };
  secondStage: { percent: number; standardPoints: number };
}): number {
  for (const [name, stage] of Object.entries({ firstStage, secondStage })) {
    if (!(stage.percent >= 0 && stage.percent < 100 && stage.standardPoints >= 0)) {
      throw new RangeError(
        `twoStageUncertainty: ${name} must be in [0, 100) with a deviation >= 0, got ${stage.percent} and ${stage.standardPoints}`,
      );
    }
  }
  return Math.hypot(
    (1 - secondStage.percent / 100) * firstStage.standardPoints,
    (1 - firstStage.percent / 100) * secondStage.standardPoints,
  );
}

/**
 * Uncertainty of the mean of two oven samples: half their difference (the standard error from two values) or what the
 * balance leaves, whichever is larger. Two samples that happen to agree prove little, hence never below the balance;
 * and from two values alone the standard error is itself only a rough guess.
 *
 * @param first   moisture and its standard deviation from the balance
 * @param second  the same for the other sample
 * @returns mean, percent of fresh weight; one standard deviation of it in points; which of the two decided
 * Checked in tests/domain/moisture/oven-uncertainty.test.ts
 */
export function duplicatesUncertainty(
  first: { moisturePercent: number; standardPoints: number },
  second: { moisturePercent: number; standardPoints: number },
): { moisturePercent: number; standardPoints: number; from: 'difference' | 'balance' } {
  const fromDifference = Math.abs(first.moisturePercent - second.moisturePercent) / 2;
  const fromBalance = Math.hypot(first.standardPoints, second.standardPoints) / 2;
  return {
    moisturePercent: (first.moisturePercent + second.moisturePercent) / 2,
    standardPoints: Math.max(fromDifference, fromBalance),
    from: fromDifference > fromBalance ? 'difference' : 'balance',
  };
}
