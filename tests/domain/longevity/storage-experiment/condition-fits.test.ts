import { describe, expect, test } from 'vitest';
import {
  type ConditionRefusal,
  fitConditions,
} from '../../../../lib/domain/longevity/storage-experiment/condition-fits';
import { fitStorageExperiment } from '../../../../lib/domain/longevity/storage-experiment/fit-storage-experiment';
import { sigmaDays } from '../../../../lib/domain/longevity/viability-equation';
import { fitProbit } from '../../../../lib/domain/statistics/probit-regression';
import { condition, goldenExperiment } from './simulated-experiments';

test('a condition of one lot has the sigma of its own probit line', () => {
  const { rows } = goldenExperiment('one_lot_held');
  const fits = fitConditions(rows);
  expect(fits).toHaveLength(9);
  for (const fit of fits) {
    if (!fit.ok) throw new Error(fit.message);
    const own = rows.filter(
      (row) => row.moisturePercent === fit.moisturePercent && row.temperatureC === fit.temperatureC,
    );
    const line = fitProbit({
      x: own.map((row) => row.days),
      successes: own.map((row) => row.germinated),
      trials: own.map((row) => row.sown),
    });
    if (!line.ok) throw new Error(line.message);
    expect(Math.abs(fit.sigmaDays * -line.slope - 1)).toBeLessThan(1e-9);
    expect(fit.initialProbits[0]?.probits).toBeCloseTo(line.intercept, 9);
    // Delta method: sd(log10 sigma) = sd(slope) / (|slope| ln 10).
    const error = Math.sqrt(line.covariance[1][1]) / -line.slope / Math.LN10;
    expect(Math.abs(fit.standardErrorLog10 / error - 1)).toBeLessThan(1e-8);
  }
});

test('each condition scatters about the fit of the whole by its own standard error', () => {
  const golden = goldenExperiment('wheat_three_lots_held');
  const whole = fitStorageExperiment(golden.rows, golden);
  if (!whole.ok) throw new Error(whole.message);
  const fits = fitConditions(golden.rows).filter((fit) => fit.ok);
  expect(fits.length).toBeGreaterThan(10);
  for (const fit of fits) {
    const z = (fit.log10Sigma - Math.log10(sigmaDays(whole.constants, fit))) / fit.standardErrorLog10;
    expect(Math.abs(z)).toBeLessThan(3.5);
  }
});

test('counts before storage serve every condition of their lot', () => {
  const before = { lot: 'A', moisturePercent: null, temperatureC: null, days: 0, sown: 200, germinated: 194 };
  const rows = [
    before,
    ...condition(8, 20, [
      [100, 45],
      [300, 31],
    ]),
    ...condition(8, 40, [
      [20, 44],
      [60, 25],
    ]),
  ];
  const fits = fitConditions(rows);
  expect(fits.map((fit) => [fit.ok, fit.counts])).toEqual([
    [true, 3],
    [true, 3],
  ]);
});

describe('a condition by itself may say nothing', () => {
  const cases: [string, ConditionRefusal['reason'], [number, number][]][] = [
    ['one count', 'too-few-counts', [[100, 40]]],
    [
      'no decline',
      'no-decline',
      [
        [0, 45],
        [50, 45],
        [100, 47],
      ],
    ],
    [
      'all alive',
      'no-variation',
      [
        [0, 50],
        [50, 50],
        [100, 50],
      ],
    ],
    [
      'all dead',
      'no-variation',
      [
        [10, 0],
        [50, 0],
        [100, 0],
      ],
    ],
    [
      'alive, then dead',
      'separation',
      [
        [0, 50],
        [50, 50],
        [100, 0],
      ],
    ],
  ];
  test.each(cases)('%s', (_, reason, counts) => {
    const [fit] = fitConditions(condition(8, 20, counts));
    expect(fit).toMatchObject({ ok: false, reason, moisturePercent: 8, temperatureC: 20 });
    expect((fit as ConditionRefusal).message).toMatch(/\.$/);
  });
});
