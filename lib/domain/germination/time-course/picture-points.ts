/*
 * A germination curve as points to be joined: what the picture draws, so that picture and table show one number.
 */
import type { FittedCurve } from './fitted-curve';
import { fittedShare } from './fitted-day';
import type { GerminationCurve } from './germination-curve';

export interface PicturePoint {
  day: number;
  /** shares of all seeds set, 0-1 */
  germinated: number;
  lower: number;
  upper: number;
}

/**
 * The curve as stairs: level until an inspection, then straight up to what it found. When within the stretch the seeds
 * germinated is not known, and the stairs do not pretend to.
 *
 * @param curve  from germinationCurve
 * @returns two points for each inspection after the first point, in order of days
 * Checked in tests/domain/germination/time-course/picture-points.test.ts
 */
export function stairPoints(curve: GerminationCurve): PicturePoint[] {
  return curve.points.flatMap(({ day, germinated, lower, upper }, i) => {
    const after = { day, germinated, lower, upper };
    const before = curve.points[i - 1];
    if (!before) return [after];
    return [{ day, germinated: before.germinated, lower: before.lower, upper: before.upper }, after];
  });
}

/**
 * The fitted curve from day 0 to a last day, evenly spaced.
 *
 * @param fit      from fitGerminationCurve
 * @param lastDay  > 0
 * @param points   how many, integer, >= 2
 * @returns day and share of all seeds set, in order of days
 * @throws RangeError when the last day or the number of points is outside its range
 * Checked in tests/domain/germination/time-course/picture-points.test.ts
 */
export function fittedPoints(
  fit: FittedCurve,
  { lastDay, points = 101 }: { lastDay: number; points?: number },
): { day: number; germinated: number }[] {
  if (!(lastDay > 0 && lastDay < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`fittedPoints: lastDay must be above 0, got ${lastDay}`);
  }
  if (!Number.isSafeInteger(points) || points < 2) {
    throw new RangeError(`fittedPoints: points must be a whole number of at least 2, got ${points}`);
  }
  return Array.from({ length: points }, (_, i) => {
    const day = (lastDay * i) / (points - 1);
    return { day, germinated: fittedShare(fit, day) };
  });
}
