/**
 * Moisture content by the oven: weigh a dish, weigh it with fresh seed, dry it, weigh it again. What was lost is taken
 * to be water. The dried sample is dead and must never be sown.
 */

/** Largest difference between two oven samples of one lot, in points of percent. Status: from memory for seed (ISTA),
 * published for grain (ASAE S352: replicates within 0.2 %). Beyond it, weigh two new samples. */
export const OVEN_DUPLICATE_TOLERANCE_POINTS = 0.2;

/** 8.3 - 8.1 is a hair more than 0.2 in binary; a difference this small is rounding, not moisture. */
const ROUNDING_SLACK_POINTS = 1e-9;

/**
 * Moisture content from three weights, as percent of fresh weight: (M2 - M3) * 100 / (M2 - M1).
 *
 * @param dish          empty dish with its lid (M1), grams, >= 0 (0 on a balance that was tared)
 * @param dishAndFresh  dish and lid with the seed before drying (M2), grams, > dish
 * @param dishAndDry    dish and lid with the seed after drying (M3), grams, > dish and <= dishAndFresh
 * @returns percent of fresh weight, in [0, 100)
 * @throws RangeError when a weight is not finite or the order dish < dishAndDry <= dishAndFresh is broken
 * @see formula published in a thesis after the ISTA Rules 2016 (oven at 103 C for 17 h, low constant method)
 * Checked in tests/domain/moisture/oven.test.ts
 */
export function moistureFromOven({
  dish,
  dishAndFresh,
  dishAndDry,
}: {
  dish: number;
  dishAndFresh: number;
  dishAndDry: number;
}): number {
  if (!Number.isFinite(dish) || dish < 0) {
    throw new RangeError(`moistureFromOven: dish must be a finite weight >= 0, got ${dish}`);
  }
  if (!Number.isFinite(dishAndFresh) || dishAndFresh <= dish) {
    throw new RangeError(`moistureFromOven: dishAndFresh must be heavier than the dish (${dish}), got ${dishAndFresh}`);
  }
  if (!(dishAndDry > dish && dishAndDry <= dishAndFresh)) {
    throw new RangeError(
      `moistureFromOven: dishAndDry must be above dish (${dish}) and at most dishAndFresh (${dishAndFresh}), got ${dishAndDry}`,
    );
  }
  return ((dishAndFresh - dishAndDry) * 100) / (dishAndFresh - dish);
}

/**
 * Moisture content of seed that was dried in two stages (pre-dried whole, then ground and dried): S1 + S2 - S1 S2 / 100.
 *
 * @param firstStagePercent   moisture lost in pre-drying, percent of the weight before it, in [0, 100)
 * @param secondStagePercent  moisture lost in the oven, percent of the weight after pre-drying, in [0, 100)
 * @returns percent of the original fresh weight, in [0, 100)
 * @throws RangeError when either is outside [0, 100)
 * @see formula from memory (ISTA Rules chapter 9); it follows from 1 - (1 - S1)(1 - S2)
 * Checked in tests/domain/moisture/oven.test.ts
 */
export function moistureAfterPredrying({
  firstStagePercent,
  secondStagePercent,
}: {
  firstStagePercent: number;
  secondStagePercent: number;
}): number {
  for (const [name, value] of Object.entries({ firstStagePercent, secondStagePercent })) {
    if (!(value >= 0 && value < 100)) {
      throw new RangeError(`moistureAfterPredrying: ${name} must be in [0, 100), got ${value}`);
    }
  }
  return firstStagePercent + secondStagePercent - (firstStagePercent * secondStagePercent) / 100;
}

/**
 * Whether two oven samples of one lot agree, and the moisture to report when they do.
 *
 * @param firstPercent     moisture of the first sample, percent of fresh weight, in [0, 100)
 * @param secondPercent    moisture of the second sample, same unit and range
 * @param tolerancePoints  largest difference allowed, in points of percent, > 0; 0.2 by default (see
 *                         OVEN_DUPLICATE_TOLERANCE_POINTS for how sure that figure is)
 * @returns the mean as moisturePercent, or `{ ok: false, reason: 'duplicates-differ' }`; both give the difference
 * @throws RangeError when an argument is outside its range
 * Checked in tests/domain/moisture/oven.test.ts
 */
export function moistureFromDuplicates({
  firstPercent,
  secondPercent,
  tolerancePoints = OVEN_DUPLICATE_TOLERANCE_POINTS,
}: {
  firstPercent: number;
  secondPercent: number;
  tolerancePoints?: number;
}):
  | { ok: true; moisturePercent: number; differencePoints: number; tolerancePoints: number }
  | { ok: false; reason: 'duplicates-differ'; differencePoints: number; tolerancePoints: number } {
  for (const [name, value] of Object.entries({ firstPercent, secondPercent })) {
    if (!(value >= 0 && value < 100)) {
      throw new RangeError(`moistureFromDuplicates: ${name} must be in [0, 100), got ${value}`);
    }
  }
  if (!(tolerancePoints > 0 && Number.isFinite(tolerancePoints))) {
    throw new RangeError(`moistureFromDuplicates: tolerancePoints must be a finite number > 0, got ${tolerancePoints}`);
  }
  const differencePoints = Math.abs(firstPercent - secondPercent);
  if (differencePoints > tolerancePoints + ROUNDING_SLACK_POINTS) {
    return { ok: false, reason: 'duplicates-differ', differencePoints, tolerancePoints };
  }
  return { ok: true, moisturePercent: (firstPercent + secondPercent) / 2, differencePoints, tolerancePoints };
}
