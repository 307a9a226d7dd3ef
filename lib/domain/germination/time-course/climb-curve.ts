/*
 * Climbs the likelihood of a germination curve by Newton's method, damped until every step goes up.
 */
import { choleskyFactor, choleskySolve } from '../../statistics/cholesky';
import { inverseLogOdds, logOdds } from '../../statistics/log-odds';
import { type CurveCoordinates, curveLikelihoodAt, curveLogLikelihood } from './curve-likelihood';
import { type CurveShape, STANDARD_DISTRIBUTIONS } from './curve-shapes';
import { isGerminated, type SeedInterval } from './dish-counts';

export interface CurveTop {
  coordinates: CurveCoordinates;
  logLikelihood: number;
}

const MAX_ITERATIONS = 300;
/** Squared length of a step in standard errors; below NEAR, steps are taken whole since the gain drowns in rounding. */
const NEAR_DECREMENT = 1e-9;
const CONVERGED_DECREMENT = 1e-20;
/** Steps this short that no longer shrink are rounding error. */
const ROUNDING_DECREMENT = 1e-13;
/** A limit this close to 1 is not approached further: the curve with a limit of 1 is fitted beside it. */
const FARTHEST_LOGIT = 25;
const MOST_DAMPINGS = 60;
const LEAST_START_SPREAD = 0.02;

/**
 * The top of the likelihood from a start read off the counts, with the limit free or held.
 *
 * @param shape             see CurveShape
 * @param intervals         from seedIntervals, some germinated
 * @param from.limit        (0, 1]: the start, or the value held
 * @param from.isLimitFree  whether the limit is climbed as well; then it must be below 1
 * @param from.start        coordinates to start from instead of those read off the counts
 * @returns the top, or null where the climb does not arrive (for a free limit also: where it runs up to 1)
 * Checked through fitGerminationCurve: tests/golden/germination-time-course.json
 */
export function climbCurve(
  shape: CurveShape,
  intervals: readonly SeedInterval[],
  { limit, isLimitFree, start }: { limit: number; isLimitFree: boolean; start?: CurveCoordinates },
): CurveTop | null {
  let at = withLimit(start ?? startFromCounts(shape, intervals), limit);
  for (let widening = 0; widening < MOST_DAMPINGS; widening++) {
    if (curveLogLikelihood(shape, intervals, at) > Number.NEGATIVE_INFINITY) break;
    at = { ...at, logSpread: at.logSpread + 0.5 };
  }
  let previousDecrement = Number.POSITIVE_INFINITY;
  for (let iteration = 0; iteration < MAX_ITERATIONS; iteration++) {
    const { value, slope, curvature } = curveLikelihoodAt(shape, intervals, at, isLimitFree);
    if (!Number.isFinite(value)) return null;
    const stepDamped = (damping: number) => {
      // Damping is relative to each coordinate's own curvature, with a floor for one that is flat or bends upwards.
      const factor = choleskyFactor(
        curvature.map((row, r) =>
          row.map((bend, c) => -bend + (r === c && damping > 0 ? damping * (Math.abs(bend) + 1e-6) : 0)),
        ),
      );
      return factor && choleskySolve(factor, slope);
    };
    const whole = stepDamped(0);
    const decrement = whole
      ? whole.reduce((sum, part, i) => sum + part * (slope[i] ?? 0), 0)
      : Number.POSITIVE_INFINITY;
    if (whole && decrement < NEAR_DECREMENT) {
      const isLast =
        decrement <= CONVERGED_DECREMENT || (decrement < ROUNDING_DECREMENT && decrement >= previousDecrement);
      at = move(at, whole, isLimitFree);
      if (isLast) return { coordinates: at, logLikelihood: curveLogLikelihood(shape, intervals, at) };
      previousDecrement = decrement;
      continue;
    }
    let next: CurveCoordinates | null = null;
    for (let damping = 0, tries = 0; tries < MOST_DAMPINGS; tries++, damping = damping === 0 ? 1e-3 : damping * 3) {
      const step = damping === 0 ? whole : stepDamped(damping);
      const tried = step && move(at, step, isLimitFree);
      if (tried && curveLogLikelihood(shape, intervals, tried) > value) {
        next = tried;
        break;
      }
    }
    if (!next) return null;
    if (isLimitFree && next.logitLimit > FARTHEST_LOGIT) return null;
    at = next;
  }
  return null;
}

function move(at: CurveCoordinates, step: readonly number[], isLimitFree: boolean): CurveCoordinates {
  const moved = { ...at, logMiddle: at.logMiddle + (step[0] ?? 0), logSpread: at.logSpread + (step[1] ?? 0) };
  if (!isLimitFree) return moved;
  const logitLimit = at.logitLimit + (step[2] ?? 0);
  return { ...moved, logitLimit, limit: inverseLogOdds(logitLimit) };
}

function withLimit(at: CurveCoordinates, limit: number): CurveCoordinates {
  return { ...at, limit, logitLimit: logOdds(limit) };
}

/** Mean and deviation of the logarithm of each stretch's middle. */
function startFromCounts(shape: CurveShape, intervals: readonly SeedInterval[]): CurveCoordinates {
  const dated = intervals.filter(isGerminated).map((interval) => ({
    log: Math.log((interval.fromDay + interval.toDay) / 2),
    seeds: interval.seeds,
  }));
  const seeds = dated.reduce((sum, { seeds: count }) => sum + count, 0);
  const mean = dated.reduce((sum, { log, seeds: count }) => sum + log * count, 0) / seeds;
  const variance = dated.reduce((sum, { log, seeds: count }) => sum + count * (log - mean) ** 2, 0) / seeds;
  const spread = Math.max(LEAST_START_SPREAD, Math.sqrt(variance) / STANDARD_DISTRIBUTIONS[shape].deviation);
  return { logMiddle: mean, logSpread: Math.log(spread), limit: 1, logitLimit: Number.POSITIVE_INFINITY };
}
