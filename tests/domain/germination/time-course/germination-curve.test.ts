import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type DishCounts, seedIntervals } from '../../../../lib/domain/germination/time-course/dish-counts';
import {
  type GerminationCurve,
  germinationCurve,
} from '../../../../lib/domain/germination/time-course/germination-curve';
import { innermostStretches } from '../../../../lib/domain/germination/time-course/innermost-stretches';
import { binomialInterval } from '../../../../lib/domain/statistics/binomial-interval';
import { goldenRows } from '../../../support/golden-table';
import { alikeDishes, anyDishes, onOtherDays, timesAsMany } from './any-dishes';
import { dish, GOLDEN, goldenDishes } from './golden-cases';

const SEED = { seed: 20261125 };

interface PointRow {
  name: string;
  day: number;
  germinated: number;
  standardError: number;
}

function curveOf(dishes: readonly DishCounts[]): GerminationCurve {
  const curve = germinationCurve(dishes);
  if (!curve.ok) throw new Error(`expected a curve, got ${curve.reason} for ${JSON.stringify(dishes)}`);
  return curve;
}

function expectPoint(row: PointRow, tolerance: number): void {
  const point = curveOf(goldenDishes(row.name)).points.find(({ day }) => day === row.day);
  expect(point, `${row.name} day ${row.day}`).toBeDefined();
  if (!point) return;
  expect(Math.abs(point.germinated - row.germinated), `${row.name} day ${row.day}`).toBeLessThanOrEqual(tolerance);
  if (row.standardError < 1e-7) return; // at all germinated R returns 0 or its rounding
  const standardError = Math.sqrt((point.germinated * (1 - point.germinated)) / point.effectiveSeeds);
  expect(Math.abs(standardError / row.standardError - 1), `${row.name} day ${row.day}`).toBeLessThanOrEqual(1e-11);
}

describe('against R', () => {
  test('shared inspection days: Kaplan-Meier with Greenwood standard errors', () => {
    for (const row of goldenRows<PointRow>(GOLDEN, 'kaplanMeier')) expectPoint(row, 1e-13);
  });

  test('different inspection days: EM run to rounding, errors from the information', () => {
    for (const row of goldenRows<PointRow>(GOLDEN, 'expectationMaximisation')) expectPoint(row, 1e-13);
  });

  test("different inspection days: survfit's own estimate", () => {
    // survfit stops its EM early (its figures differ from EM run to rounding by up to 1e-3), and names a stretch by its middle.
    const rows = goldenRows<PointRow>(GOLDEN, 'survfitTurnbull').filter(({ germinated }) => germinated > 0);
    for (const row of rows) {
      const { rises } = curveOf(goldenDishes(row.name));
      const risen = rises.filter(({ fromDay }) => fromDay < row.day).reduce((sum, { share }) => sum + share, 0);
      expect(Math.abs(risen - row.germinated), `${row.name} day ${row.day}`).toBeLessThanOrEqual(2e-3);
    }
  });
});

describe('ends', () => {
  test('nothing germinated: a flat curve with the interval of 0 of n', () => {
    const curve = curveOf([
      dish(50, [
        [3, 0],
        [7, 0],
      ]),
    ]);
    expect(curve.rises).toEqual([]);
    expect(curve.final.germinated).toBe(0);
    expect(curve.final.upper).toBeCloseTo(binomialInterval({ successes: 0, trials: 50 }).upper, 14);
    expect(curve.points[0]).toEqual({ day: 0, germinated: 0, lower: 0, upper: 0, effectiveSeeds: 50 });
  });

  test('one seed, germinated or not', () => {
    expect(curveOf([dish(1, [[4, 1]])]).final).toMatchObject({ germinated: 1, upper: 1 });
    expect(curveOf([dish(1, [[4, 0]])]).final).toMatchObject({ germinated: 0, lower: 0 });
  });

  test('all germinated between two inspections: one rise, final germination exactly 1', () => {
    const curve = curveOf([
      dish(50, [
        [3, 0],
        [5, 50],
        [7, 0],
      ]),
    ]);
    expect(curve.rises).toEqual([{ fromDay: 3, toDay: 5, share: 1 }]);
    expect(curve.final).toMatchObject({ germinated: 1, upper: 1, effectiveSeeds: 50 });
  });

  test('where none germinated, a lost dish says nothing of the days after it', () => {
    const curve = curveOf([
      dish(20, [
        [3, 0],
        [7, 0],
      ]),
      dish(30, [[3, 0]]),
    ]);
    expect(curve.points.map(({ day, effectiveSeeds }) => [day, effectiveSeeds])).toEqual([
      [0, 50],
      [3, 50],
      [7, 20],
    ]);
    expect(curve.final.upper).toBeCloseTo(binomialInterval({ successes: 0, trials: 20 }).upper, 14);
  });

  test('a dish lost early is not counted as seed that failed', () => {
    const whole = curveOf([
      dish(20, [
        [3, 10],
        [7, 8],
      ]),
    ]);
    const withLost = curveOf([
      dish(20, [
        [3, 10],
        [7, 8],
      ]),
      dish(20, [[3, 10]]),
    ]);
    expect(withLost.final.germinated).toBeCloseTo(whole.final.germinated, 12);
    expect(withLost.final.effectiveSeeds).toBeGreaterThan(whole.final.effectiveSeeds);
    expect(withLost.final.effectiveSeeds).toBeLessThan(40);
  });
});

describe('laws', () => {
  test('without lost seed every point is the running total with its usual interval', () => {
    fc.assert(
      fc.property(alikeDishes, ([first]) => {
        const one = first as DishCounts;
        const curve = curveOf([one]);
        for (const { day, germinated, lower, upper } of curve.points.slice(1)) {
          const successes = one.inspections
            .filter(({ toDay }) => toDay <= day)
            .reduce((n, line) => n + line.germinated, 0);
          const expected = binomialInterval({ successes, trials: one.seeds });
          expect(germinated).toBeCloseTo(successes / one.seeds, 12);
          expect(lower).toBeCloseTo(expected.lower, 10);
          expect(upper).toBeCloseTo(expected.upper, 10);
        }
      }),
      SEED,
    );
  });

  test('shared days with lost dishes give the product of the shares left at each inspection', () => {
    fc.assert(
      fc.property(alikeDishes, (dishes) => {
        const curve = curveOf(dishes);
        let left = 1;
        for (const { day, germinated } of curve.points.slice(1)) {
          let watched = 0;
          let found = 0;
          for (const { seeds, inspections } of dishes) {
            const now = inspections.find(({ toDay }) => toDay === day);
            if (!now) continue;
            watched +=
              seeds - inspections.filter(({ toDay }) => toDay < day).reduce((n, line) => n + line.germinated, 0);
            found += now.germinated;
          }
          left *= watched === 0 ? 1 : 1 - found / watched;
          expect(germinated).toBeCloseTo(1 - left, 10);
        }
      }),
      SEED,
    );
  });

  test('one curve, whatever the days: it rises, its band holds it, and no shift of seed is likelier', () => {
    fc.assert(
      fc.property(anyDishes, (dishes) => {
        const curve = curveOf(dishes);
        for (const [i, { germinated, lower, upper, effectiveSeeds }] of curve.points.entries()) {
          expect(germinated).toBeGreaterThanOrEqual((curve.points[i - 1]?.germinated ?? 0) - 1e-12);
          expect(lower).toBeLessThanOrEqual(germinated);
          expect(upper).toBeGreaterThanOrEqual(germinated);
          expect(effectiveSeeds).toBeGreaterThan(0);
          expect(effectiveSeeds).toBeLessThanOrEqual(curve.seeds);
        }
        expect(curve.rises.reduce((sum, { share }) => sum + share, 0)).toBeLessThanOrEqual(1 + 1e-12);
        // At the top no place pulls more than the seeds there are: sum over the seeds that could lie there of 1 / chance.
        const intervals = seedIntervals(dishes);
        const beyond = {
          fromDay: Math.max(...intervals.map(({ fromDay }) => fromDay)),
          toDay: Number.POSITIVE_INFINITY,
        };
        const all = [...curve.rises, { ...beyond, share: 1 - curve.final.germinated }];
        const chance = (one: { fromDay: number; toDay: number }) =>
          all.reduce(
            (sum, rise) => (rise.fromDay >= one.fromDay && rise.toDay <= one.toDay ? sum + rise.share : sum),
            0,
          );
        for (const place of innermostStretches(intervals).stretches) {
          const pull = intervals
            .filter(({ fromDay, toDay }) => fromDay <= place.fromDay && place.toDay <= toDay)
            .reduce((sum, interval) => sum + interval.seeds / chance(interval), 0);
          expect(pull / curve.seeds).toBeLessThanOrEqual(1 + 1e-7);
        }
      }),
      { ...SEED, numRuns: 400 },
    );
  });

  test('splitting a dish into two with the same days changes nothing', () => {
    fc.assert(
      fc.property(anyDishes, fc.integer({ min: 2, max: 3 }), (dishes, times) => {
        const together = curveOf(timesAsMany(dishes, times));
        const apart = curveOf(Array.from({ length: times }, () => dishes).flat());
        expect(apart).toEqual(together);
      }),
      SEED,
    );
  });

  test('twice the seed with twice the counts leaves the curve and halves its variance', () => {
    fc.assert(
      fc.property(anyDishes, (dishes) => {
        const once = curveOf(dishes);
        const twice = curveOf(timesAsMany(dishes, 2));
        for (const [i, { germinated, effectiveSeeds }] of once.points.entries()) {
          expect(twice.points[i]?.germinated).toBeCloseTo(germinated, 9);
          expect((twice.points[i]?.effectiveSeeds ?? 0) / effectiveSeeds).toBeCloseTo(2, 5);
        }
      }),
      SEED,
    );
  });

  test('days only name the points: counted in hours the curve is the same', () => {
    fc.assert(
      fc.property(anyDishes, (dishes) => {
        const inDays = curveOf(dishes);
        const inHours = curveOf(onOtherDays(dishes, (day) => day * 24));
        expect(inHours.points.map(({ germinated }) => germinated)).toEqual(
          inDays.points.map((point) => point.germinated),
        );
        expect(inHours.final.day).toBe(inDays.final.day * 24);
      }),
      SEED,
    );
  });

  test('more seed that did not germinate lowers final germination', () => {
    fc.assert(
      fc.property(anyDishes, fc.integer({ min: 1, max: 30 }), (dishes, more) => {
        const before = curveOf(dishes).final;
        const lastDay = before.day;
        const after = curveOf([...dishes, dish(more, [[lastDay, 0]])]).final;
        if (before.germinated > 0) expect(after.germinated).toBeLessThan(before.germinated);
        else expect(after.germinated).toBe(0);
      }),
      SEED,
    );
  });
});
