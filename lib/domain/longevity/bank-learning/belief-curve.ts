/** A normal belief as a curve to draw, in data units: the picture draws it and reckons nothing. */
import { normalDensity } from '../../statistics/normal-distribution';

/**
 * @param belief      mean and sd > 0, in the units of the axis (probits, or log rate)
 * @param from, to    ends of the axis, to > from
 * @param steps       >= 1; default 80
 * @returns density at steps + 1 even places from one end to the other, per unit of the axis
 * @throws RangeError when an argument is outside its range
 * Checked in tests/domain/longevity/bank-learning/belief-curve.test.ts
 */
export function beliefCurve(
  { mean, sd }: { mean: number; sd: number },
  { from, to, steps = 80 }: { from: number; to: number; steps?: number },
): { x: number; density: number }[] {
  if (!(to > from)) throw new RangeError(`beliefCurve: to must be above from, got ${from} to ${to}`);
  if (!(sd > 0)) throw new RangeError(`beliefCurve: sd must be above 0, got ${sd}`);
  if (!(Number.isInteger(steps) && steps >= 1)) throw new RangeError(`beliefCurve: steps must be >= 1, got ${steps}`);
  return Array.from({ length: steps + 1 }, (_, step) => {
    const x = from + ((to - from) * step) / steps;
    return { x, density: normalDensity((x - mean) / sd) / sd };
  });
}
