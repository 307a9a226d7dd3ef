/*
 * Days read off a fitted germination curve, with intervals.
 */
import { normalQuantile } from '../../statistics/normal-distribution';
import { requireProportion } from '../../statistics/require-proportion';
import { STANDARD_DISTRIBUTIONS } from './curve-shapes';
import type { FittedCurve } from './fitted-curve';

/**
 * Share of all seeds set that has germinated by a day, on the fitted curve.
 *
 * @param fit  from fitGerminationCurve
 * @param day  >= 0
 * @returns proportion in [0, limit]
 * @throws RangeError when the day is below 0 or not a number
 * Checked in tests/domain/germination/time-course/fitted-day.test.ts
 */
export function fittedShare(fit: FittedCurve, day: number): number {
  if (!(day >= 0)) throw new RangeError(`fittedShare: day must be at least 0, got ${day}`);
  return fit.limit * STANDARD_DISTRIBUTIONS[fit.shape].cdf(fit.steepness * (Math.log(day) - Math.log(fit.middleDay)));
}

/**
 * Day by which a share has germinated, on the fitted curve.
 *
 * day = middleDay * exp(spread * Q(share)), Q the quantile of the standard distribution; for a share of all seeds set,
 * Q(share / limit). The interval is normal on the logarithm of the day, by the delta method from the covariance.
 *
 * @param fit    from fitGerminationCurve
 * @param share  in (0, 1)
 * @param of     'able': of the seeds able to germinate; 'set': of all seeds set
 * @param level  of the interval, probability in (0, 1); defaults to the fit's
 * @returns the day with its interval, or that the curve never rises to that share
 * @throws RangeError when the share or level is outside its range
 * Checked against a published worked example and R: tests/domain/germination/time-course/fitted-day.test.ts
 */
export function fittedDay(
  fit: FittedCurve,
  { share, of, level = fit.level }: { share: number; of: 'able' | 'set'; level?: number },
): { ok: true; day: number; lower: number; upper: number; level: number } | { ok: false; reason: 'not-reached' } {
  requireProportion('fittedDay', 'share', share, true);
  requireProportion('fittedDay', 'level', level, true);
  const ofAble = of === 'able' ? share : share / fit.limit;
  if (ofAble >= 1) return { ok: false, reason: 'not-reached' };
  const { quantile, density } = STANDARD_DISTRIBUTIONS[fit.shape];
  const z = quantile(ofAble);
  const spread = 1 / fit.steepness;
  const logDay = fit.coordinates.logMiddle + spread * z;
  // By log middle, by log spread, and by logit limit: share / limit falls as the limit rises.
  const byLimit = of === 'able' ? 0 : (-spread * ofAble * (1 - fit.limit)) / density(z);
  const slope = [1, spread * z, byLimit].slice(0, fit.covariance.length);
  const variance = slope.reduce(
    (sum, a, r) => sum + slope.reduce((inner, b, c) => inner + a * b * (fit.covariance[r]?.[c] ?? 0), 0),
    0,
  );
  const margin = -normalQuantile((1 - level) / 2) * Math.sqrt(variance);
  return { ok: true, day: Math.exp(logDay), lower: Math.exp(logDay - margin), upper: Math.exp(logDay + margin), level };
}
