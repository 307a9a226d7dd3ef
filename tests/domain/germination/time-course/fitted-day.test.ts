import { describe, expect, test } from 'vitest';
import type { DishCounts } from '../../../../lib/domain/germination/time-course/dish-counts';
import { type FittedCurve, fitGerminationCurve } from '../../../../lib/domain/germination/time-course/fitted-curve';
import { fittedDay, fittedShare } from '../../../../lib/domain/germination/time-course/fitted-day';
import { normalCdf } from '../../../../lib/domain/statistics/normal-distribution';
import { dish, goldenDishes } from './golden-cases';

function fitted(dishes: readonly DishCounts[], shape: 'log-logistic' | 'log-normal' = 'log-logistic'): FittedCurve {
  const fit = fitGerminationCurve(dishes, { shape });
  if (!fit.ok) throw new Error(fit.reason);
  return fit;
}

test('a published population: half of all seed by day 5.14', () => {
  // Log-normal with middle 4.5 days, spread 0.6 and 85 % able to germinate has its T50 of all seed at 5.14 days:
  // worked example at statforbiology.com/seedgermination/timetoevent (seen). A million seeds shared out by that curve.
  const total = (day: number) => Math.round(1e6 * 0.85 * normalCdf((Math.log(day) - Math.log(4.5)) / 0.6));
  const counts = Array.from({ length: 40 }, (_, i) => [i + 1, total(i + 1) - (i === 0 ? 0 : total(i))] as const);
  const fit = fitted([dish(1e6, counts)], 'log-normal');
  expect(fit.limit).toBeCloseTo(0.85, 4);
  expect(fit.steepness).toBeCloseTo(1 / 0.6, 3);
  const half = fittedDay(fit, { share: 0.5, of: 'set' });
  expect(half).toMatchObject({ ok: true });
  if (half.ok) expect(half.day).toBeCloseTo(5.14, 2);
});

describe('days of a fitted curve', () => {
  const fit = fitted(goldenDishes('dish_lost_half_way'));

  test('half of those able to germinate is the middle day with its interval', () => {
    const half = fittedDay(fit, { share: 0.5, of: 'able' });
    if (!half.ok) throw new Error('expected a day');
    expect(half.day).toBeCloseTo(fit.middleDay, 12);
    expect(half.lower).toBeCloseTo(fit.middleDayInterval.lower, 12);
    expect(half.upper).toBeCloseTo(fit.middleDayInterval.upper, 12);
  });

  test('at the day found the curve stands at the share asked for', () => {
    for (const share of [0.1, 0.5, 0.8]) {
      const ofAll = fittedDay(fit, { share, of: 'set' });
      const ofAble = fittedDay(fit, { share, of: 'able' });
      if (!ofAll.ok || !ofAble.ok) throw new Error('expected days');
      expect(fittedShare(fit, ofAll.day)).toBeCloseTo(share, 12);
      expect(fittedShare(fit, ofAble.day)).toBeCloseTo(share * fit.limit, 12);
      expect(ofAll.lower).toBeLessThan(ofAll.day);
      expect(ofAll.upper).toBeGreaterThan(ofAll.day);
    }
  });

  test('the interval for half of all seed agrees with the delta method worked from finite differences', () => {
    const half = fittedDay(fit, { share: 0.5, of: 'set' });
    if (!half.ok) throw new Error('expected a day');
    const logDayAt = (change: number[]) => {
      const [a = 0, b = 0, c = 0] = change;
      const logitLimit = fit.coordinates.logitLimit + c;
      const share = 0.5 * (1 + Math.exp(-logitLimit));
      const spread = Math.exp(fit.coordinates.logSpread + b);
      return fit.coordinates.logMiddle + a + spread * Math.log(share / (1 - share));
    };
    const h = 1e-5;
    const slope = [0, 1, 2].map((k) => {
      const at = (sign: number) => logDayAt([0, 1, 2].map((i) => (i === k ? sign * h : 0)));
      return (at(1) - at(-1)) / (2 * h);
    });
    const variance = slope.reduce(
      (sum, a, r) => sum + slope.reduce((inner, b, c) => inner + a * b * (fit.covariance[r]?.[c] ?? 0), 0),
      0,
    );
    expect(Math.log(half.upper / half.day)).toBeCloseTo(1.959963984540054 * Math.sqrt(variance), 8);
  });

  test('a share above the limit is never reached, and said so', () => {
    expect(fittedDay(fitted(goldenDishes('chickweed')), { share: 0.5, of: 'set' })).toEqual({
      ok: false,
      reason: 'not-reached',
    });
  });

  test('begins at nothing and rises to the limit', () => {
    expect(fittedShare(fit, 0)).toBe(0);
    expect(fittedShare(fit, 1e9)).toBeCloseTo(fit.limit, 12);
  });

  test('refuses days and shares outside their range', () => {
    expect(() => fittedShare(fit, -1)).toThrow('fittedShare: day must be at least 0, got -1');
    expect(() => fittedDay(fit, { share: 1, of: 'able' })).toThrow('fittedDay: share must be in (0, 1), got 1');
    expect(() => fittedDay(fit, { share: 0.5, of: 'able', level: 2 })).toThrow('level must be in (0, 1), got 2');
  });
});
