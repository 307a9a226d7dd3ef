import { edgeBetween } from '../../statistics/edge-between';
import { type CurveTop, climbCurve } from './climb-curve';
import type { CurveShape } from './curve-shapes';
import type { SeedInterval } from './dish-counts';

const CLOSE_ENOUGH = 1e-10;

/**
 * Profile-likelihood interval for the share able to germinate: every limit whose best curve loses no more than z^2 / 2 of
 * log-likelihood against the best of all.
 *
 * Chosen over plus or minus z standard errors because the limit is often close to 1, where those are nonsense. At 1
 * itself the interval holds the truth at least as often as the level says, mostly more often.
 *
 * @param shape      see CurveShape
 * @param intervals  from seedIntervals
 * @param top        the best curve
 * @param z          standard normal value of the level, > 0
 * @returns proportions in (0, 1]; upper is 1 exactly where a limit of 1 is still likely
 * Checked against R's own profile: tests/golden/germination-time-course.json
 */
export function likelyLimits(
  shape: CurveShape,
  intervals: readonly SeedInterval[],
  top: CurveTop,
  z: number,
): { lower: number; upper: number } {
  // Each best curve is close to the next one looked for, which saves most of the climb.
  let start = top.coordinates;
  const isLikely = (limit: number) => {
    const best = climbCurve(shape, intervals, { limit, isLimitFree: false, start });
    if (best) start = best.coordinates;
    return best !== null && 2 * (top.logLikelihood - best.logLikelihood) <= z * z;
  };
  const edge = (unlikely: number) => {
    if (unlikely > 0 && isLikely(unlikely)) return unlikely;
    const [likely] = edgeBetween(isLikely, top.coordinates.limit, unlikely, CLOSE_ENOUGH);
    return likely;
  };
  return { lower: edge(0), upper: edge(1) };
}
