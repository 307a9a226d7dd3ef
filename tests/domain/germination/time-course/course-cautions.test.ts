import { describe, expect, test } from 'vitest';
import { courseCautions } from '../../../../lib/domain/germination/time-course/course-cautions';
import type { DishCounts } from '../../../../lib/domain/germination/time-course/dish-counts';
import { germinationCurve } from '../../../../lib/domain/germination/time-course/germination-curve';
import { dish } from './golden-cases';

function cautions(dishes: readonly DishCounts[]) {
  const curve = germinationCurve(dishes);
  if (!curve.ok) throw new Error(curve.reason);
  return courseCautions(dishes, curve);
}

describe('still rising', () => {
  test('when more than a twentieth of the germinated was found at the last inspection', () => {
    const ending = (atEnd: number) =>
      cautions([
        dish(100, [
          [3, 40 - atEnd],
          [5, atEnd],
        ]),
      ]).isStillRising;
    expect(ending(2)).toBe(false);
    expect(ending(3)).toBe(true);
  });

  test('not when an inspection after it found none', () => {
    expect(
      cautions([
        dish(100, [
          [3, 20],
          [5, 20],
          [9, 0],
        ]),
      ]).isStillRising,
    ).toBe(false);
  });
});

test('one stretch: all found at one inspection', () => {
  expect(
    cautions([
      dish(50, [
        [3, 0],
        [5, 50],
        [7, 0],
      ]),
    ]).isOneStretch,
  ).toBe(true);
  expect(
    cautions([
      dish(50, [
        [3, 1],
        [5, 49],
        [7, 0],
      ]),
    ]).isOneStretch,
  ).toBe(false);
  expect(cautions([dish(50, [[3, 0]])]).isOneStretch).toBe(false);
});

describe('dishes', () => {
  test('that differ by more than chance are named', () => {
    const even = [dish(50, [[5, 45]]), dish(50, [[5, 43]])];
    const uneven = [dish(50, [[5, 48]]), dish(50, [[5, 20]])];
    expect(cautions(even).doDishesDiffer).toBe(false);
    expect(cautions(uneven).doDishesDiffer).toBe(true);
  });

  test('a dish lost early is not compared, and a single dish has nothing to be compared with', () => {
    const lost = cautions([
      dish(50, [
        [5, 20],
        [9, 25],
      ]),
      dish(50, [[5, 20]]),
    ]);
    expect(lost.betweenDishes).toBeNull();
    expect(lost.doDishesDiffer).toBe(false);
  });
});
