import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DishCounts } from '../../../../lib/domain/germination/time-course/dish-counts';
import { type CountedAt, germinationSpeed } from '../../../../lib/domain/germination/time-course/germination-speed';
import { expectClose, goldenRows } from '../../../support/golden-table';
import { anyDishes, germinatedOf, timesAsMany } from './any-dishes';
import { dish, GOLDEN, goldenDishes } from './golden-cases';

const SEED = { seed: 20261125 };

interface SpeedRow {
  name: string;
  countedAt: CountedAt;
  germinated: number;
  meanDays: number;
  varianceDays: number | null;
  seedsPerDay: number;
  synchrony: number | null;
}

function speedOf(dishes: readonly DishCounts[], countedAt?: CountedAt) {
  const speed = germinationSpeed(dishes, countedAt && { countedAt });
  if (!speed.ok) throw new Error(`${speed.reason} for ${JSON.stringify(dishes)}`);
  return speed;
}

test('mean, variance, speed and synchrony as R has them seed by seed', () => {
  for (const row of goldenRows<SpeedRow>(GOLDEN, 'speeds')) {
    const speed = speedOf(goldenDishes(row.name), row.countedAt);
    expect(speed.germinated).toBe(row.germinated);
    expectClose(speed.meanDays, row.meanDays, 1e-12, row);
    expectClose(speed.seedsPerDay, row.seedsPerDay, 1e-11, row);
    for (const figure of ['varianceDays', 'synchrony'] as const) {
      const expected = row[figure];
      if (expected === null) expect(speed[figure], row.name).toBeNull();
      else
        expect(Math.abs((speed[figure] ?? Number.NaN) - expected), row.name).toBeLessThanOrEqual(
          1e-9 * Math.max(1, expected),
        );
    }
  }
});

test('the figures worked by hand', () => {
  // 2 seeds found on day 2, 6 on day 4: mean 28/8, sum of squares 2 x 2.25 + 6 x 0.25 = 6 over 7, speed 1 + 1.5.
  const speed = speedOf([
    dish(10, [
      [2, 2],
      [4, 6],
    ]),
  ]);
  expect(speed).toMatchObject({ germinated: 8, meanDays: 3.5, seedsPerDay: 2.5, firstDay: 2, lastDay: 4 });
  expect(speed.varianceDays).toBeCloseTo(6 / 7, 14);
  expect(speed.coefficientOfVariation).toBeCloseTo(Math.sqrt(6 / 7) / 3.5, 14);
  expect(speed.standardErrorDays).toBeCloseTo(Math.sqrt(6 / 7 / 8), 14);
  expect(speed.seedsPerDayPerSeedSet).toBeCloseTo(0.25, 14);
  expect(speed.synchrony).toBeCloseTo((2 + 30) / 56, 14);
});

describe('ends', () => {
  test('none germinated: no figure', () => {
    expect(germinationSpeed([dish(50, [[3, 0]])])).toEqual({ ok: false, reason: 'none-germinated' });
  });

  test('one seed has a mean and no spread', () => {
    expect(speedOf([dish(1, [[4, 1]])])).toMatchObject({ meanDays: 4, varianceDays: null, synchrony: null });
  });

  test('all on one inspection: no spread, all together', () => {
    expect(speedOf([dish(50, [[3, 50]])])).toMatchObject({ varianceDays: 0, synchrony: 1, meanDays: 3 });
  });

  test('dated to the middle of the stretch when asked', () => {
    expect(
      speedOf(
        [
          dish(5, [
            [3, 0],
            [7, 4],
          ]),
        ],
        'middle',
      ).meanDays,
    ).toBe(5);
  });
});

test('the mean lies between the first and the last day, and more seed of the same kind changes only the counts', () => {
  fc.assert(
    fc.property(anyDishes, (dishes) => {
      if (germinatedOf(dishes) === 0) return;
      const once = speedOf(dishes);
      const twice = speedOf(timesAsMany(dishes, 2));
      expect(once.meanDays).toBeGreaterThanOrEqual(once.firstDay - 1e-12);
      expect(once.meanDays).toBeLessThanOrEqual(once.lastDay + 1e-12);
      expect(speedOf(dishes, 'middle').meanDays).toBeLessThan(once.meanDays);
      expect(twice.meanDays).toBeCloseTo(once.meanDays, 10);
      expect(twice.seedsPerDay).toBeCloseTo(2 * once.seedsPerDay, 10);
      expect(twice.seedsPerDayPerSeedSet).toBeCloseTo(once.seedsPerDayPerSeedSet, 10);
    }),
    SEED,
  );
});
