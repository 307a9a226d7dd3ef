/*
 * What goes into a probit regression, and the cases in which there is nothing to fit.
 */
import { requireCounts } from './require-counts';

export interface ProbitData {
  /** the variable, finite numbers in any unit */
  x: readonly number[];
  /** counts, integers, 0 <= successes[i] <= trials[i]; same length as x */
  successes: readonly number[];
  /** counts, integers, >= 0; a point with 0 trials says nothing and is left out. Same length as x */
  trials: readonly number[];
}

export type ProbitRefusalReason = 'too-few-points' | 'no-variation' | 'separation' | 'did-not-converge';

export interface ProbitRefusal {
  ok: false;
  reason: ProbitRefusalReason;
  /** the reason as a plain sentence */
  message: string;
}

/** A test as the fit sees it. */
export interface ProbitPoint {
  x: number;
  successes: number;
  failures: number;
}

/**
 * Checks the data of a probit regression and gathers it into points; those without a trial are left out.
 *
 * @throws RangeError when lengths differ, an x is not finite, or a count is not an integer in its range
 * Checked through `fitProbit`: tests/domain/statistics/probit-regression.test.ts
 */
export function readProbitPoints({ x, successes, trials }: ProbitData): ProbitPoint[] {
  if (x.length !== successes.length || x.length !== trials.length) {
    throw new RangeError(
      `fitProbit: x, successes and trials must be equally long, got ${x.length}, ${successes.length}, ${trials.length}`,
    );
  }
  const points: ProbitPoint[] = [];
  for (const [i, value] of x.entries()) {
    if (!Number.isFinite(value)) throw new RangeError(`fitProbit: x must be finite numbers, got ${value}`);
    const succeeded = successes[i] ?? Number.NaN;
    const tried = trials[i] ?? Number.NaN;
    requireCounts('fitProbit', succeeded, tried);
    if (tried > 0) points.push({ x: value, successes: succeeded, failures: tried - succeeded });
  }
  return points;
}

/**
 * Says why no finite line can be most likely for these points; null when one exists.
 *
 * One exists exactly when the x range holding successes and the x range holding failures overlap by more than one value
 * of x (Albert & Anderson 1984, Biometrika 71:1-10). Finding it out beforehand is exact; watching an iteration run away
 * is not.
 *
 * Checked through `fitProbit`: tests/domain/statistics/probit-regression.test.ts
 */
export function refuseUnfittable(points: readonly ProbitPoint[]): ProbitRefusal | null {
  if (points.length < 2) return refuse('too-few-points');
  const withSuccess = points.filter((point) => point.successes > 0).map((point) => point.x);
  const withFailure = points.filter((point) => point.failures > 0).map((point) => point.x);
  const oneX = points.every((point) => point.x === points[0]?.x);
  if (oneX || withSuccess.length === 0 || withFailure.length === 0) return refuse('no-variation');
  const overlap =
    Math.min(...withSuccess) < Math.max(...withFailure) && Math.min(...withFailure) < Math.max(...withSuccess);
  return overlap ? null : refuse('separation');
}

const REFUSAL_MESSAGES: Record<ProbitRefusalReason, string> = {
  'too-few-points': 'A curve needs tests at two different times at least.',
  'no-variation': 'The tests do not vary: all at one time, or all the seeds alive, or all dead. No curve can be drawn.',
  separation:
    'On one side of some point all the seeds were alive and on the other all were dead: the slope is unknown.',
  'did-not-converge': 'The calculation did not settle on one curve; the tests say too little about the slope.',
};

/** A refusal with its plain sentence. */
export function refuse(reason: ProbitRefusalReason): ProbitRefusal {
  return { ok: false, reason, message: REFUSAL_MESSAGES[reason] };
}
