import { climbCurve } from './climb-curve';
import type { CurveCoordinates } from './curve-likelihood';
import type { CurveShape } from './curve-shapes';
import type { SeedInterval } from './dish-counts';

const HALVINGS = 60;

/**
 * Lower bound of the share able to germinate where the likeliest share is 1: the smallest limit whose best curve loses
 * no more than z^2 / 2 of log-likelihood against the limit of 1.
 *
 * At the edge this holds the truth at least as often as the level says, mostly more often.
 *
 * @param shape          see CurveShape
 * @param intervals      from seedIntervals
 * @param top            the best curve with limit 1
 * @param logLikelihood  its log-likelihood
 * @param z              standard normal value of the level
 * @returns proportion in [0, 1)
 * Checked by its own definition in tests/domain/germination/time-course/fitted-curve.test.ts
 */
export function lowestLikelyLimit(
  shape: CurveShape,
  intervals: readonly SeedInterval[],
  top: CurveCoordinates,
  logLikelihood: number,
  z: number,
): number {
  const isLikely = (limit: number) => {
    const best = climbCurve(shape, intervals, { limit, isLimitFree: false, start: top });
    return best !== null && 2 * (logLikelihood - best.logLikelihood) <= z * z;
  };
  let unlikely = 0;
  let likely = 1;
  for (let halving = 0; halving < HALVINGS && likely - unlikely > 1e-12; halving++) {
    const middle = (unlikely + likely) / 2;
    if (isLikely(middle)) likely = middle;
    else unlikely = middle;
  }
  return likely;
}
