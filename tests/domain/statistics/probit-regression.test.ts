import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { normalCdf, normalQuantile } from '../../../lib/domain/statistics/normal-distribution';
import type { ProbitData, ProbitRefusalReason } from '../../../lib/domain/statistics/probit-data';
import { fitProbit, type ProbitFit } from '../../../lib/domain/statistics/probit-regression';
import { expectClose, goldenRows } from '../../support/golden-table';

const SEED = { seed: 20261125 };

interface Row {
  name: string;
  x: number[];
  successes: number[];
  trials: number[];
  intercept: number;
  slope: number;
  v11: number;
  v12: number;
  v22: number;
  deviance: number;
  pearsonChiSquare: number;
  degreesOfFreedom: number;
}

function fitted(data: ProbitData): ProbitFit {
  const fit = fitProbit(data);
  if (!fit.ok) throw new Error(`expected a fit, got ${fit.reason} for ${JSON.stringify(data)}`);
  return fit;
}

function expectSameFit(fit: ProbitFit, row: Row, tolerance: number): void {
  expectClose(fit.intercept, row.intercept, tolerance, { intercept: row.name });
  expectClose(fit.slope, row.slope, tolerance, { slope: row.name });
  expectClose(fit.covariance[0][0], row.v11, tolerance, { v11: row.name });
  expectClose(fit.covariance[0][1], row.v12, tolerance, { v12: row.name });
  expect(fit.covariance[1][0]).toBe(fit.covariance[0][1]);
  expectClose(fit.covariance[1][1], row.v22, tolerance, { v22: row.name });
  // A curve through every point has a deviance of 0, of which either program returns only rounding.
  expect(Math.abs(fit.deviance - row.deviance), row.name).toBeLessThanOrEqual(1e-8 * Math.max(1, row.deviance));
  expect(Math.abs(fit.pearsonChiSquare - row.pearsonChiSquare), row.name).toBeLessThanOrEqual(
    1e-6 * Math.max(1, row.pearsonChiSquare),
  );
  expect(fit.degreesOfFreedom).toBe(row.degreesOfFreedom);
}

describe('against R', () => {
  const glm = goldenRows<Row>('probit-regression', 'fits');
  test.each(glm.map((row) => [row.name, row] as const))('glm, %s', (_, row) => {
    // 1e-6 is asked for. R stops climbing a little early where points fit badly, which is what the tolerance is for.
    expectSameFit(fitted(row), row, 1e-7);
  });

  const near = goldenRows<Row>('probit-regression', 'nearSeparation');
  test.each(near.map((row) => [row.name, row] as const))('score equations solved by bisection, %s', (_, row) => {
    expectSameFit(fitted(row), row, 1e-8);
  });
});

test('the classic insecticide trial', () => {
  // Counts: Finney (1971), Probit Analysis. Figures worked out with R glm on log10 dose without the zero dose.
  const dose = [10.2, 7.7, 5.1, 3.8, 2.6];
  const fit = fitted({ x: dose.map(Math.log10), successes: [44, 42, 24, 16, 6], trials: [50, 49, 46, 48, 50] });
  expect(fit.intercept).toBeCloseTo(-2.887463, 6);
  expect(fit.slope).toBeCloseTo(4.213197, 6);
  expect(10 ** (-fit.intercept / fit.slope)).toBeCloseTo(4.845492, 6);
  expect(fit.deviance).toBeCloseTo(1.738969, 6);
  expect(fit.degreesOfFreedom).toBe(3);
});

describe('laws', () => {
  /** Five tests of 10-400 seeds over twelve years, falling as seed does, with chance left to the generator. */
  const history = fc
    .array(
      fc.record({
        years: fc.integer({ min: 0, max: 12 }),
        sown: fc.integer({ min: 10, max: 400 }),
        share: fc.double({ min: 0.02, max: 0.98, noNaN: true }),
      }),
      { minLength: 3, maxLength: 6 },
    )
    .map((tests) => ({
      x: tests.map((t) => t.years),
      successes: tests.map((t) => Math.max(1, Math.min(t.sown - 1, Math.round(t.share * t.sown)))),
      trials: tests.map((t) => t.sown),
    }))
    .filter((data) => new Set(data.x).size > 1);

  test('the fitted counts add to the counts seen, weighted as the score says', () => {
    fc.assert(
      fc.property(history, (data) => {
        const fit = fitted(data);
        let atTop = 0;
        let slopeAtTop = 0;
        for (const [i, x] of data.x.entries()) {
          const probit = fit.intercept + fit.slope * x;
          const p = normalCdf(probit);
          const density = Math.exp(-probit * probit * 0.5) / Math.sqrt(2 * Math.PI);
          const term = (((data.successes[i] ?? 0) - (data.trials[i] ?? 0) * p) * density) / (p * normalCdf(-probit));
          atTop += term;
          slopeAtTop += term * x;
        }
        expect(Math.abs(atTop)).toBeLessThanOrEqual(1e-8);
        expect(Math.abs(slopeAtTop)).toBeLessThanOrEqual(1e-7);
      }),
      SEED,
    );
  });

  test('counting the dead turns every sign, and another unit or origin of time changes only the figures that carry it', () => {
    fc.assert(
      fc.property(history, (data) => {
        const fit = fitted(data);
        const dead = fitted({ ...data, successes: data.successes.map((count, i) => (data.trials[i] ?? 0) - count) });
        expect(dead.intercept).toBeCloseTo(-fit.intercept, 9);
        expect(dead.slope).toBeCloseTo(-fit.slope, 9);
        const inDays = fitted({ ...data, x: data.x.map((years) => years * 365.25 + 40000) });
        expect(inDays.slope * 365.25).toBeCloseTo(fit.slope, 8);
        expect(inDays.intercept + inDays.slope * 40000).toBeCloseTo(fit.intercept, 7);
        expect(Math.abs(inDays.deviance - fit.deviance)).toBeLessThanOrEqual(1e-8 * (1 + fit.deviance));
      }),
      SEED,
    );
  });

  test('splitting a test in two at the same time changes neither line nor covariance', () => {
    const whole = fitted({ x: [0, 5, 10], successes: [190, 160, 90], trials: [200, 200, 200] });
    const split = fitted({ x: [0, 0, 5, 10], successes: [97, 93, 160, 90], trials: [100, 100, 200, 200] });
    expect(split.intercept).toBeCloseTo(whole.intercept, 10);
    expect(split.slope).toBeCloseTo(whole.slope, 10);
    expect(split.covariance[1][1]).toBeCloseTo(whole.covariance[1][1], 12);
    expect(split.degreesOfFreedom).toBe(whole.degreesOfFreedom + 1);
  });

  test('whenever living and dead overlap in time the fit is finite, however lopsided the counts', () => {
    const lopsided = fc
      .array(
        fc.record({
          x: fc.integer({ min: 0, max: 10 }),
          trials: fc.integer({ min: 1, max: 1_000_000 }),
          kind: fc.constantFrom('none', 'one', 'half', 'all but one', 'all'),
        }),
        { minLength: 2, maxLength: 7 },
      )
      .map((tests) => ({
        x: tests.map((t) => t.x),
        trials: tests.map((t) => t.trials),
        successes: tests.map(
          ({ trials, kind }) =>
            ({ none: 0, one: 1, half: Math.floor(trials / 2), 'all but one': trials - 1, all: trials })[kind] ?? 0,
        ),
      }));
    fc.assert(
      fc.property(lopsided, (data) => {
        const fit = fitProbit(data);
        if (!fit.ok) {
          const living = data.x.filter((_, i) => (data.successes[i] ?? 0) > 0);
          const dead = data.x.filter((_, i) => (data.successes[i] ?? 0) < (data.trials[i] ?? 0));
          const overlap = Math.min(...living) < Math.max(...dead) && Math.min(...dead) < Math.max(...living);
          expect(overlap, `${fit.reason} for ${JSON.stringify(data)}`).toBe(false);
          return;
        }
        for (const figure of [fit.intercept, fit.slope, ...fit.covariance.flat(), fit.deviance]) {
          expect(Number.isFinite(figure)).toBe(true);
        }
        // One seed dead 38 probits above the curve takes chi-square beyond the largest double: Infinity, never NaN.
        expect(fit.pearsonChiSquare).toBeGreaterThanOrEqual(0);
        expect(fit.covariance[1][1]).toBeGreaterThan(0);
      }),
      { ...SEED, numRuns: 500 },
    );
  });

  test('two points are met exactly', () => {
    const fit = fitted({ x: [0, 4], successes: [9, 5], trials: [10, 10] });
    expect(fit.intercept).toBeCloseTo(normalQuantile(0.9), 10);
    expect(fit.intercept + 4 * fit.slope).toBeCloseTo(0, 10);
    expect(fit.degreesOfFreedom).toBe(0);
    expect(fit.deviance).toBeLessThanOrEqual(1e-10);
  });
});

describe('refusals say why, and never NaN', () => {
  const cases: [string, ProbitRefusalReason, ProbitData][] = [
    ['no test', 'too-few-points', { x: [], successes: [], trials: [] }],
    ['one test', 'too-few-points', { x: [1], successes: [5], trials: [10] }],
    ['one test with seeds', 'too-few-points', { x: [1, 2], successes: [5, 0], trials: [10, 0] }],
    ['all at one time', 'no-variation', { x: [3, 3, 3], successes: [5, 6, 7], trials: [10, 10, 10] }],
    ['all alive', 'no-variation', { x: [1, 2], successes: [10, 10], trials: [10, 10] }],
    ['all dead', 'no-variation', { x: [1, 2], successes: [0, 0], trials: [10, 10] }],
    ['all alive, then all dead', 'separation', { x: [1, 2, 3], successes: [10, 10, 0], trials: [10, 10, 10] }],
    ['all dead, then all alive', 'separation', { x: [1, 2, 3], successes: [0, 10, 10], trials: [10, 10, 10] }],
    ['one time mixed at the end of the living', 'separation', { x: [1, 2], successes: [10, 4], trials: [10, 10] }],
    ['only one time mixed', 'separation', { x: [1, 2, 3], successes: [10, 4, 0], trials: [10, 10, 10] }],
    [
      'all alive until the last',
      'separation',
      { x: [0, 1, 2, 10], successes: [50, 50, 50, 20], trials: [50, 50, 50, 50] },
    ],
  ];
  test.each(cases)('%s', (_, reason, data) => {
    const fit = fitProbit(data);
    expect(fit).toMatchObject({ ok: false, reason });
    if (!fit.ok) expect(fit.message).toMatch(/\.$/);
  });

  test('a single seed out of line is enough for a fit', () => {
    const fit = fitted({ x: [1, 2, 3, 4], successes: [399, 400, 1, 0], trials: [400, 400, 400, 400] });
    expect(Number.isFinite(fit.slope)).toBe(true);
    expect(fit.slope).toBeLessThan(0);
  });

  test('an empty test between others is left out', () => {
    const with0 = fitted({ x: [0, 3, 5], successes: [9, 0, 4], trials: [10, 0, 10] });
    expect(with0).toEqual(fitted({ x: [0, 5], successes: [9, 4], trials: [10, 10] }));
  });
});

test('refuses unequal lengths, times that are no number and impossible counts by name', () => {
  expect(() => fitProbit({ x: [1, 2], successes: [1], trials: [2, 2] })).toThrow(/equally long/);
  expect(() => fitProbit({ x: [1, 2], successes: [1, 1], trials: [2] })).toThrow(/equally long/);
  expect(() => fitProbit({ x: [1], successes: [1, 1], trials: [2, 2] })).toThrow(/equally long/);
  expect(() => fitProbit({ x: [1, Number.NaN], successes: [1, 1], trials: [2, 2] })).toThrow(
    'fitProbit: x must be finite numbers, got NaN',
  );
  expect(() => fitProbit({ x: [1, 2], successes: [1, 3], trials: [2, 2] })).toThrow(RangeError);
  expect(() => fitProbit({ x: [1, 2], successes: [1, 0.5], trials: [2, 2] })).toThrow(RangeError);
});
