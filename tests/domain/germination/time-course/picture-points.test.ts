import { expect, test } from 'vitest';
import { fitGerminationCurve } from '../../../../lib/domain/germination/time-course/fitted-curve';
import { germinationCurve } from '../../../../lib/domain/germination/time-course/germination-curve';
import { fittedPoints, stairPoints } from '../../../../lib/domain/germination/time-course/picture-points';
import { dish, goldenDishes } from './golden-cases';

test('stairs stay level until the inspection that found more', () => {
  const curve = germinationCurve([
    dish(10, [
      [3, 4],
      [5, 2],
    ]),
  ]);
  if (!curve.ok) throw new Error('expected a curve');
  expect(stairPoints(curve).map(({ day, germinated }) => [day, germinated])).toEqual([
    [0, 0],
    [3, 0],
    [3, expect.closeTo(0.4, 12)],
    [5, expect.closeTo(0.4, 12)],
    [5, expect.closeTo(0.6, 12)],
  ]);
  expect(stairPoints(curve).at(-1)).toMatchObject({ lower: curve.final.lower, upper: curve.final.upper });
});

test('the fitted curve is drawn from nothing on day 0 to the last day', () => {
  const fit = fitGerminationCurve(goldenDishes('chickweed'));
  if (!fit.ok) throw new Error('expected a fit');
  const points = fittedPoints(fit, { lastDay: 281.5, points: 11 });
  expect(points).toHaveLength(11);
  expect(points[0]).toEqual({ day: 0, germinated: 0 });
  expect(points.at(-1)?.day).toBe(281.5);
  expect(points.at(-1)?.germinated).toBeCloseTo(fit.limit, 3);
  expect(() => fittedPoints(fit, { lastDay: 0 })).toThrow('fittedPoints: lastDay must be above 0, got 0');
  expect(() => fittedPoints(fit, { lastDay: 9, points: 1 })).toThrow(
    'points must be a whole number of at least 2, got 1',
  );
});
