/**
 * The picture of a drying run as the balance shows it: weights with the tray, the fitted curve, the weight to stop at,
 * and the time in which it is likely to be reached. Points only; the drawing reckons nothing.
 */
import { dryingCurve } from './drying-curve';
import type { DryingProgress, Weighing } from './drying-progress';

export interface WeightPoint {
  hours: number;
  /** with the tray */
  weightG: number;
}

export interface DryingWeights {
  weighed: WeightPoint[];
  /** empty where no curve was fitted */
  curve: WeightPoint[];
  /** with the tray */
  targetWeightG: number;
  /** when the target is likely to be reached, cut off at the picture's end; null where no time can be told */
  reachedBetween: { fromHours: number; toHours: number; openEnded: boolean } | null;
  fromHours: number;
  toHours: number;
}

/**
 * Points of the picture.
 *
 * @param progress               an answer of dryingProgress with ok: true
 * @param weighings              those it was made from, seed alone
 * @param targetMoisturePercent  the target it was asked for
 * @param tareG                  empty tray, grams, >= 0: added to every weight
 * @returns weights in grams at hours of the weighings' clock; the stretch of time is that of dryingCurve
 * Checked in tests/domain/moisture/drying-weights.test.ts
 */
export function dryingWeights(
  progress: Extract<DryingProgress, { ok: true }>,
  weighings: readonly Weighing[],
  targetMoisturePercent: number,
  tareG: number,
): DryingWeights {
  const { weighed, curve, fromHours, toHours } = dryingCurve(progress, weighings, targetMoisturePercent);
  const asWeight = ({ hours, moisturePercent }: { hours: number; moisturePercent: number }): WeightPoint => ({
    hours,
    weightG: tareG + (100 * progress.dryMatterG) / (100 - moisturePercent),
  });
  const { verdict } = progress;
  return {
    weighed: weighed.map(asWeight),
    curve: curve.map(asWeight),
    targetWeightG: tareG + progress.targetWeightG,
    reachedBetween:
      verdict.kind === 'on-the-way'
        ? {
            fromHours: verdict.lowerHours,
            toHours: Math.min(verdict.upperHours ?? toHours, toHours),
            openEnded: verdict.upperHours === null || verdict.upperHours > toHours,
          }
        : null,
    fromHours,
    toHours,
  };
}
