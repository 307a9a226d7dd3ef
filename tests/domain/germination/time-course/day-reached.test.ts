import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayReached, type ShareOf } from '../../../../lib/domain/germination/time-course/day-reached';
import type { DishCounts } from '../../../../lib/domain/germination/time-course/dish-counts';
import { germinationCurve } from '../../../../lib/domain/germination/time-course/germination-curve';
import { expectClose, goldenRows } from '../../../support/golden-table';
import { alikeDishes, anyDishes, germinatedOf, onOtherDays, timesAsMany } from './any-dishes';
import { dish, GOLDEN, goldenDishes } from './golden-cases';

const SEED = { seed: 20261125 };

function reached(dishes: readonly DishCounts[], share: number, of: ShareOf = 'germinated') {
  const curve = germinationCurve(dishes);
  if (!curve.ok) throw new Error(`no curve for ${JSON.stringify(dishes)}`);
  return dayReached(curve, { share, of });
}

function dayOf(dishes: readonly DishCounts[], share: number, of: ShareOf = 'germinated') {
  const found = reached(dishes, share, of);
  if (!found.ok) throw new Error(`${found.reason} for ${JSON.stringify(dishes)}`);
  return found;
}

test('straight lines between running totals, as R draws them', () => {
  for (const row of goldenRows<{ name: string; share: number; of: ShareOf; day: number }>(GOLDEN, 'straightLines')) {
    expectClose(dayOf(goldenDishes(row.name), row.share, row.of).day, row.day, 1e-10, row);
  }
});

test("half of the germinated: the usual formula on a dish's running totals", () => {
  // t_i + (N/2 - n_i)(t_j - t_i)/(n_j - n_i) with totals 4, 24, 40: 20 lies between days 4 and 5, 16/20 of the way.
  const counts = [
    dish(50, [
      [3, 0],
      [4, 4],
      [5, 20],
      [7, 16],
    ]),
  ];
  expect(dayOf(counts, 0.5).day).toBeCloseTo(4.8, 12);
  // Half of all 50 set is 25: one seed into the two days from day 5.
  expect(dayOf(counts, 0.5, 'set').day).toBeCloseTo(5 + 2 / 16, 12);
});

describe('the interval', () => {
  test('holds the days whose share is within z standard errors of a half', () => {
    // 96 germinated, 4 each quarter day on 1 to 24 quarters: z sqrt(1/4 / 96) = 0.100018.
    const even = [
      dish(
        100,
        Array.from({ length: 24 }, (_, i) => [i + 1, 4] as const),
      ),
    ];
    const half = dayOf(even, 0.5);
    expect(half.day).toBeCloseTo(12, 10);
    expect(half.lower).toBeCloseTo(24 * (0.5 - 1.959963984540054 / (2 * Math.sqrt(96))), 10);
    expect(half.upper).toBeCloseTo(24 * (0.5 + 1.959963984540054 / (2 * Math.sqrt(96))), 10);
    expect(half).toMatchObject({ lowerByInspection: 9, upperByInspection: 15, between: { fromDay: 11, toDay: 12 } });
  });

  test('is left open where so few germinated that any day would do', () => {
    expect(
      dayOf(
        [
          dish(20, [
            [3, 1],
            [5, 2],
          ]),
        ],
        0.5,
      ),
    ).toMatchObject({ lower: null, upper: null });
    expect(
      dayOf(
        [
          dish(20, [
            [3, 1],
            [5, 3],
          ]),
        ],
        0.5,
      ).lower,
    ).not.toBeNull();
  });

  test('is open above where half of all seed may not have been reached', () => {
    const barely = dayOf(
      [
        dish(100, [
          [3, 30],
          [5, 22],
        ]),
      ],
      0.5,
      'set',
    );
    expect(barely.lower).not.toBeNull();
    expect(barely.upper).toBeNull();
  });
});

describe('ends', () => {
  test('none germinated, or never that many: said so', () => {
    expect(reached([dish(50, [[3, 0]])], 0.5)).toEqual({ ok: false, reason: 'none-germinated' });
    expect(reached([dish(50, [[3, 20]])], 0.5, 'set')).toEqual({ ok: false, reason: 'not-reached' });
    expect(reached([dish(50, [[3, 25]])], 0.5, 'set')).toMatchObject({ ok: true, day: 3 });
  });

  test('all in one stretch: the middle of it by assumption, and no more than the stretch without', () => {
    const found = dayOf(
      [
        dish(50, [
          [3, 0],
          [5, 50],
        ]),
      ],
      0.5,
    );
    expect(found.day).toBeCloseTo(4, 12);
    expect(found).toMatchObject({ lowerByInspection: 3, upperByInspection: 5 });
  });

  test('a half that is reached exactly is reached on that inspection, not later', () => {
    expect(
      dayOf(
        [
          dish(50, [
            [3, 10],
            [6, 0],
            [9, 10],
          ]),
        ],
        0.5,
      ).day,
    ).toBe(3);
  });

  test('refuses shares and levels outside their range', () => {
    const curve = germinationCurve([dish(5, [[2, 3]])]);
    if (!curve.ok) throw new Error('expected a curve');
    expect(() => dayReached(curve, { share: 0, of: 'set' })).toThrow('dayReached: share must be in (0, 1], got 0');
    expect(() => dayReached(curve, { share: 0.5, of: 'set', level: 1 })).toThrow('level must be in (0, 1), got 1');
  });
});

describe('laws', () => {
  const germinating = anyDishes.filter((dishes) => germinatedOf(dishes) > 0);

  test('sowing earlier by some days moves the day by as many', () => {
    fc.assert(
      fc.property(germinating, fc.integer({ min: 1, max: 9 }), (dishes, later) => {
        const shifted = onOtherDays(dishes, (day) => day + later);
        expect(dayOf(shifted, 0.5).day).toBeCloseTo(dayOf(dishes, 0.5).day + later, 8);
      }),
      SEED,
    );
  });

  test('twice the seed with twice the counts leaves the day and never widens its interval', () => {
    fc.assert(
      fc.property(germinating, (dishes) => {
        const once = dayOf(dishes, 0.5);
        const twice = dayOf(timesAsMany(dishes, 2), 0.5);
        expect(twice.day).toBeCloseTo(once.day, 7);
        if (once.lower !== null) expect(twice.lower).toBeGreaterThanOrEqual(once.lower - 1e-7);
        if (once.upper !== null) expect(twice.upper).toBeLessThanOrEqual(once.upper + 1e-7);
      }),
      SEED,
    );
  });

  test('seed that never germinates leaves the T50 of the germinated where dishes share their days and none is lost', () => {
    fc.assert(
      fc.property(alikeDishes, fc.integer({ min: 1, max: 50 }), ([first], more) => {
        const one = first as DishCounts;
        if (germinatedOf([one]) === 0) return;
        expect(dayOf([{ ...one, seeds: one.seeds + more }], 0.5).day).toBeCloseTo(dayOf([one], 0.5).day, 9);
      }),
      SEED,
    );
  });

  test('more is reached later, and the day lies in its interval and in its stretch', () => {
    fc.assert(
      fc.property(germinating, (dishes) => {
        let before = 0;
        for (const share of [0.1, 0.25, 0.5, 0.75, 0.9, 1]) {
          const { day, lower, upper, between } = dayOf(dishes, share);
          expect(day).toBeGreaterThanOrEqual(before);
          expect(day).toBeGreaterThanOrEqual(between.fromDay);
          expect(day).toBeLessThanOrEqual(between.toDay);
          expect(lower ?? day).toBeLessThanOrEqual(day);
          expect(upper ?? day).toBeGreaterThanOrEqual(day);
          before = day;
        }
      }),
      SEED,
    );
  });
});
