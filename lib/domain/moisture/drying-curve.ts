/**
 * The picture of a drying jar: weighings as moisture, the fitted curve as it goes on, and the target. Points only; the
 * drawing reckons nothing.
 */
import { approachAt } from './approach-fit';
import type { DryingProgress, Weighing } from './drying-progress';

export type MoisturePoint = { hours: number; moisturePercent: number };

export type DryingPicture = {
  weighed: MoisturePoint[];
  /** empty where no curve was fitted */
  curve: MoisturePoint[];
  targetMoisturePercent: number;
  fromHours: number;
  toHours: number;
};

const CURVE_POINTS = 80;
/** The picture runs on past the last weighing, but never so far that the weighings shrink into a corner. */
const MOST_TIMES_WATCHED = 3;

/**
 * Points of the picture.
 *
 * @param progress               an answer of dryingProgress with ok: true
 * @param weighings              those it was made from
 * @param targetMoisturePercent  the target it was asked for
 * @returns moisture in percent of fresh weight at hours of the weighings' clock. The picture ends a little after the
 *          upper end of the time to the target, at most three times the hours watched; and where the seed levels off, at
 *          one and a half times them
 * Checked in tests/domain/moisture/drying-curve.test.ts
 */
export function dryingCurve(
  progress: Extract<DryingProgress, { ok: true }>,
  weighings: readonly Weighing[],
  targetMoisturePercent: number,
): DryingPicture {
  const { dryMatterG, verdict } = progress;
  const moistureOf = (weightG: number) => (100 * (weightG - dryMatterG)) / weightG;
  const sorted = [...weighings].sort((a, b) => a.hours - b.hours);
  const fromHours = sorted[0]?.hours ?? 0;
  const lastHours = sorted.at(-1)?.hours ?? 0;
  const watched = lastHours - fromHours;
  const ahead =
    verdict.kind === 'on-the-way'
      ? 1.05 * ((verdict.upperHours ?? verdict.hours) - fromHours)
      : verdict.kind === 'levels-off-above'
        ? 1.5 * watched
        : watched;
  const toHours = fromHours + Math.max(watched, Math.min(ahead, MOST_TIMES_WATCHED * watched));
  const fit = 'fit' in verdict ? verdict.fit : null;
  return {
    weighed: sorted.map(({ hours, weightG }) => ({ hours, moisturePercent: moistureOf(weightG) })),
    curve:
      fit === null
        ? []
        : Array.from({ length: CURVE_POINTS + 1 }, (_, i) => {
            const since = ((toHours - fromHours) * i) / CURVE_POINTS;
            return { hours: fromHours + since, moisturePercent: moistureOf(approachAt(fit, since)) };
          }),
    targetMoisturePercent,
    fromHours,
    toHours,
  };
}
