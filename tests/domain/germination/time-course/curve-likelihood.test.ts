import { describe, expect, test } from 'vitest';
import {
  type CurveCoordinates,
  curveLikelihoodAt,
  curveLogLikelihood,
} from '../../../../lib/domain/germination/time-course/curve-likelihood';
import { CURVE_SHAPES } from '../../../../lib/domain/germination/time-course/curve-shapes';
import { seedIntervals } from '../../../../lib/domain/germination/time-course/dish-counts';
import { expectClose } from '../../../support/golden-table';
import { goldenDishes } from './golden-cases';

const at = (logMiddle: number, logSpread: number, logitLimit: number): CurveCoordinates => ({
  logMiddle,
  logSpread,
  logitLimit,
  limit: 1 / (1 + Math.exp(-logitLimit)),
});

describe.each(CURVE_SHAPES)('%s', (shape) => {
  test('slope and curvature away from the top are those of finite differences', () => {
    const intervals = seedIntervals(goldenDishes('dish_lost_half_way'));
    const place = [1.4, -1.1, 0.9] as const;
    const h = 1e-5;
    const shifted = (k: number, by: number) => {
      const [a, b, c] = place.map((value, i) => (i === k ? value + by : value)) as [number, number, number];
      return at(a, b, c);
    };
    const here = curveLikelihoodAt(shape, intervals, at(...place), true);
    for (let k = 0; k < 3; k++) {
      const up = curveLikelihoodAt(shape, intervals, shifted(k, h), true);
      const down = curveLikelihoodAt(shape, intervals, shifted(k, -h), true);
      expectClose(here.slope[k] ?? 0, (up.value - down.value) / (2 * h), 1e-6, { shape, k });
      for (let l = 0; l < 3; l++) {
        const bend = ((up.slope[l] ?? 0) - (down.slope[l] ?? 0)) / (2 * h);
        expectClose(here.curvature[k]?.[l] ?? 0, bend, 1e-6, { shape, k, l });
      }
    }
  });

  test('a seed far behind or ahead of all others is still counted, with its digits', () => {
    const late = [{ fromDay: 30, toDay: 31, seeds: 1 }];
    const early = [{ fromDay: 0.3, toDay: 0.31, seeds: 1 }];
    const middle = at(Math.log(3), Math.log(0.1), 0);
    expect(curveLogLikelihood(shape, late, middle)).toBeLessThan(-20);
    expect(curveLogLikelihood(shape, late, middle)).toBeGreaterThan(-1000);
    // Both shapes are symmetric in log days: as far ahead as behind is as unlikely.
    const mirrored = [{ fromDay: 9 / 0.31, toDay: 9 / 0.3, seeds: 1 }];
    const expected = curveLogLikelihood(shape, early, middle);
    expectClose(curveLogLikelihood(shape, mirrored, middle), expected, 1e-12, { shape });
  });
});
