import { expect, test } from 'vitest';
import { summariseTimeCourse } from '../../../../lib/domain/germination/time-course/summarise-time-course';
import { dish, goldenDishes } from './golden-cases';

function summary(...args: Parameters<typeof summariseTimeCourse>) {
  const found = summariseTimeCourse(...args);
  if (!found.ok) throw new Error(found.reason);
  return found;
}

test('of the two shapes the likelier one is kept', () => {
  expect(summary(goldenDishes('chickweed')).fit).toMatchObject({ ok: true, shape: 'log-logistic' });
  expect(summary(goldenDishes('rice_22C')).fit).toMatchObject({ ok: true, shape: 'log-normal' });
});

test('days between a quarter and three quarters, and between a tenth and nine tenths, of the germinated', () => {
  const even = dish(
    50,
    Array.from({ length: 10 }, (_, i) => [i + 1, 4] as const),
  );
  const { uniformity } = summary([even]);
  expect(uniformity?.middleHalfDays).toBeCloseTo(5, 10);
  expect(uniformity?.tenToNinetyDays).toBeCloseTo(8, 10);
});

test('says how far the fitted curve strays from the counts', () => {
  const gap = summary(goldenDishes('mungbean_10C')).largestGap;
  // 20 seeds found on days 3, 6 and 7 only: a smooth curve cannot follow the pause.
  expect(gap?.share).toBeGreaterThan(0.1);
  expect(summary(goldenDishes('all_germinated')).largestGap?.share).toBeLessThan(0.03);
});

test('where nothing germinated every part says so and none is a figure', () => {
  expect(summary([dish(50, [[3, 0]])])).toMatchObject({
    halfOfGerminated: { ok: false, reason: 'none-germinated' },
    halfOfSet: { ok: false, reason: 'none-germinated' },
    speed: { ok: false, reason: 'none-germinated' },
    fit: { ok: false, reason: 'none-germinated' },
    uniformity: null,
    largestGap: null,
  });
});
