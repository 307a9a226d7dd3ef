import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CurveShape } from '../../../../lib/domain/germination/time-course/curve-shapes';
import type { DishCounts } from '../../../../lib/domain/germination/time-course/dish-counts';
import { fitGerminationCurve } from '../../../../lib/domain/germination/time-course/fitted-curve';
import { expectClose, goldenRows } from '../../../support/golden-table';
import { anyDishes, onOtherDays, timesAsMany } from './any-dishes';
import { dish, GOLDEN, goldenDishes } from './golden-cases';

const SEED = { seed: 20261125 };

interface FitRow {
  name: string;
  shape: CurveShape;
  limit: number;
  limitLower: number;
  limitUpper: number;
  middleDay: number;
  steepness: number;
  seLimit: number | null;
  seMiddleDay: number;
  seSteepness: number;
  logLikelihood: number;
}

function fitted(dishes: readonly DishCounts[], shape: CurveShape = 'log-logistic') {
  const fit = fitGerminationCurve(dishes, { shape });
  if (!fit.ok) throw new Error(`${fit.reason} for ${JSON.stringify(dishes)}`);
  return fit;
}

describe('against R', () => {
  const rows = goldenRows<FitRow>(GOLDEN, 'fits');
  test.each(rows.map((row) => [row.name, row.shape, row] as const))('%s, %s: symbolic derivatives', (_, shape, row) => {
    const fit = fitted(goldenDishes(row.name), shape);
    const label = { name: row.name, shape };
    expectClose(fit.limit, row.limit, 1e-12, { ...label, figure: 'limit' });
    expectClose(fit.middleDay, row.middleDay, 1e-12, { ...label, figure: 'middle day' });
    expectClose(fit.steepness, row.steepness, 1e-12, { ...label, figure: 'steepness' });
    expectClose(fit.standardErrors.middleDay, row.seMiddleDay, 1e-11, { ...label, figure: 'error of the day' });
    expectClose(fit.standardErrors.steepness, row.seSteepness, 1e-11, { ...label, figure: 'error of the steepness' });
    if (row.seLimit === null) expect(fit.standardErrors.limit).toBeNull();
    else expectClose(fit.standardErrors.limit ?? 0, row.seLimit, 1e-11, { ...label, figure: 'error of the limit' });
    expectClose(fit.logLikelihood, row.logLikelihood, 1e-11, { ...label, figure: 'log-likelihood' });
    // R climbs each step of the profile without derivatives, which is what this tolerance is for.
    expect(Math.abs(fit.limitInterval.lower - row.limitLower)).toBeLessThanOrEqual(1e-8);
    expect(Math.abs(fit.limitInterval.upper - row.limitUpper)).toBeLessThanOrEqual(1e-8);
  });

  interface SurvregRow {
    name: string;
    shape: CurveShape;
    logMiddle: number;
    logSpread: number;
    v11: number;
    v12: number;
    v22: number;
  }
  const whole = goldenRows<SurvregRow>(GOLDEN, 'survreg');
  test.each(whole.map((row) => [row.name, row.shape, row] as const))('%s, %s: survreg', (_, shape, row) => {
    const fit = fitted(goldenDishes(row.name), shape);
    expectClose(fit.coordinates.logMiddle, row.logMiddle, 1e-12, row);
    expectClose(fit.coordinates.logSpread, row.logSpread, 1e-12, row);
    expectClose(fit.covariance[0]?.[0] ?? 0, row.v11, 1e-11, row);
    expectClose(fit.covariance[0]?.[1] ?? 0, row.v12, 1e-11, row);
    expectClose(fit.covariance[1]?.[1] ?? 0, row.v22, 1e-11, row);
  });
});

test('chickweed: the figures printed for the log-logistic curve with a limit', () => {
  // Ritz, Pipper & Streibig (2013): slope 20.77, limit 0.2001 and half time 196.05 hours; from memory.
  const fit = fitted(goldenDishes('chickweed'));
  expect(fit.steepness).toBeCloseTo(20.77, 2);
  expect(fit.limit).toBeCloseTo(0.2001, 4);
  expect(fit.middleDay).toBeCloseTo(196.05, 2);
});

describe('a limit at 1', () => {
  test('where all germinated: no share that cannot shows, and the lower bound says how large it may be', () => {
    const fit = fitted([
      dish(100, [
        [2, 3],
        [3, 21],
        [4, 44],
        [5, 22],
        [6, 8],
        [8, 2],
      ]),
    ]);
    expect(fit).toMatchObject({ limit: 1, isLimitAtOne: true, standardErrors: { limit: null } });
    expect(fit.limitInterval.upper).toBe(1);
    // All of n seeds: the likelihood of a limit is limit^n, so the bound is exp(-z^2 / 2n).
    expect(fit.limitInterval.lower).toBeCloseTo(Math.exp(-(1.959963984540054 ** 2) / 200), 8);
  });

  test('where the counts are still rising at the end: the interval is wide, not falsely sure', () => {
    const { limitInterval, isLimitAtOne } = fitted(goldenDishes('still_rising'));
    expect(isLimitAtOne).toBe(true);
    expect(limitInterval.lower).toBeLessThan(0.7);
  });
});

describe('refusals say why', () => {
  const refused = (dishes: readonly DishCounts[]) => {
    const fit = fitGerminationCurve(dishes);
    return fit.ok ? 'fitted' : fit.reason;
  };
  test.each([
    [
      'none germinated',
      'none-germinated',
      [
        dish(50, [
          [3, 0],
          [5, 0],
        ]),
      ],
    ],
    [
      'all between the same two inspections',
      'one-stretch',
      [
        dish(50, [
          [3, 0],
          [5, 50],
        ]),
      ],
    ],
    [
      'all by the first inspection',
      'one-stretch',
      [
        dish(25, [
          [3, 25],
          [5, 0],
        ]),
      ],
    ],
    [
      'one seed',
      'one-stretch',
      [
        dish(1, [
          [3, 0],
          [5, 1],
        ]),
      ],
    ],
    [
      'two stretches',
      'too-few-stretches',
      [
        dish(50, [
          [3, 20],
          [5, 20],
          [7, 0],
        ]),
      ],
    ],
    [
      'three stretches',
      'fitted',
      [
        dish(50, [
          [3, 10],
          [5, 20],
          [7, 5],
        ]),
      ],
    ],
    [
      'a crowd at once and a trickle after',
      'too-flat',
      [
        dish(1000, [
          [1, 900],
          [2, 1],
          [4, 6],
        ]),
      ],
    ],
  ] as [string, string, DishCounts[]][])('%s: %s', (_, reason, dishes) => {
    expect(refused(dishes)).toBe(reason);
  });

  test('a curve is too flat from a thousandfold time between 10 and 90 % on', () => {
    // Log-logistic: T90 / T10 = 81^(1/b), 532 for b = 0.7 and 1517 for b = 0.6. A million seeds shared out by the curve.
    const steep = (b: number) => {
      const total = (day: number) => Math.round(1e6 / (1 + (3 / day) ** b));
      const days = [0.1, 0.5, 1, 2, 4, 8, 16, 64];
      return [
        dish(
          1e6,
          days.map((day, i) => [day, total(day) - (i === 0 ? 0 : total(days[i - 1] ?? 0))] as const),
        ),
      ];
    };
    expect(refused(steep(0.7))).toBe('fitted');
    expect(refused(steep(0.6))).toBe('too-flat');
  });

  test('a level outside its range', () => {
    expect(() => fitGerminationCurve([dish(5, [[2, 3]])], { level: 0 })).toThrow(
      'fitGerminationCurve: level must be in (0, 1), got 0',
    );
  });
});

describe('laws', () => {
  test('hours instead of days change only the day', () => {
    fc.assert(
      fc.property(anyDishes, (dishes) => {
        const inDays = fitGerminationCurve(dishes);
        const inHours = fitGerminationCurve(onOtherDays(dishes, (day) => day * 24));
        expect(inHours.ok).toBe(inDays.ok);
        if (!inDays.ok || !inHours.ok) return;
        expect(inHours.limit).toBeCloseTo(inDays.limit, 6);
        expect(inHours.middleDay / 24 / inDays.middleDay).toBeCloseTo(1, 6);
        expect(inHours.logLikelihood).toBeCloseTo(inDays.logLikelihood, 7);
      }),
      SEED,
    );
  });

  test('four times the seed leaves the curve and halves the errors', () => {
    fc.assert(
      fc.property(anyDishes, (dishes) => {
        const once = fitGerminationCurve(dishes);
        const more = fitGerminationCurve(timesAsMany(dishes, 4));
        if (!once.ok || !more.ok) return;
        expect(more.limit).toBeCloseTo(once.limit, 6);
        expect(more.middleDay / once.middleDay).toBeCloseTo(1, 5);
        expect(once.standardErrors.middleDay / more.standardErrors.middleDay).toBeCloseTo(2, 3);
      }),
      SEED,
    );
  });

  test('whatever the counts: a reason or finite figures, the limit within its interval, never NaN', () => {
    fc.assert(
      fc.property(anyDishes, fc.constantFrom<CurveShape>('log-logistic', 'log-normal'), (dishes, shape) => {
        const fit = fitGerminationCurve(dishes, { shape });
        if (!fit.ok) {
          expect(fit.message).toMatch(/\.$/);
          return;
        }
        expect(fit.limit).toBeGreaterThan(0);
        expect(fit.limit).toBeLessThanOrEqual(1);
        expect(fit.limitInterval.lower).toBeLessThanOrEqual(fit.limit);
        expect(fit.limitInterval.upper).toBeGreaterThanOrEqual(fit.limit);
        for (const figure of [
          fit.middleDay,
          fit.steepness,
          fit.standardErrors.middleDay,
          fit.standardErrors.steepness,
        ]) {
          expect(Number.isFinite(figure)).toBe(true);
          expect(figure).toBeGreaterThan(0);
        }
      }),
      { ...SEED, numRuns: 150 },
    );
  });
});
