import { describe, expect, test } from 'vitest';
import type { StorageExperimentFit } from '../../../../lib/domain/longevity/storage-experiment/experiment-fit';
import { fitStorageExperiment } from '../../../../lib/domain/longevity/storage-experiment/fit-storage-experiment';
import type { StorageRow } from '../../../../lib/domain/longevity/storage-experiment/storage-row';
import { COMMON_TEMPERATURE_COEFFICIENTS } from '../../../../lib/domain/reference/longevity-constants';
import { expectClose } from '../../../support/golden-table';
import { type GoldenExperiment, goldenExperiment, goldenExperiments } from './simulated-experiments';

function fitted(rows: readonly StorageRow[], options: Parameters<typeof fitStorageExperiment>[1]) {
  const fit = fitStorageExperiment(rows, options);
  if (!fit.ok) throw new Error(`expected a fit, got ${fit.reason}: ${fit.message}`);
  return fit;
}

const estimatesOf = (fit: StorageExperimentFit): number[] => {
  const { KE, CW, CH, CQ } = fit.constants;
  const warmth = fit.temperatureCoefficients === 'fitted' ? [CH, CQ] : [];
  return [...fit.lots.map((lot) => lot.initialProbits), KE, CW, ...warmth];
};

describe('against R, by glm on the linearised model', () => {
  test.each(goldenExperiments().map((golden) => [golden.name, golden] as const))('%s', (name, golden) => {
    const fit = fitted(golden.rows, golden);
    const estimates = estimatesOf(fit);
    expect(estimates).toHaveLength(golden.estimates.length);
    for (const [i, estimate] of estimates.entries()) {
      expectClose(estimate, golden.estimates[i] as number, 1e-11, { name, parameter: fit.parameters[i] });
    }
    for (const [i, value] of fit.covariance.flat().entries()) {
      expectClose(value, golden.covariance[i] as number, 1e-8, { name, covariance: i });
    }
    const { deviance, pearsonChiSquare, degreesOfFreedom, chance } = fit.goodness;
    expect(Math.abs(deviance - golden.deviance), name).toBeLessThanOrEqual(1e-8 * Math.max(1, golden.deviance));
    expect(Math.abs(pearsonChiSquare - golden.pearsonChiSquare), name).toBeLessThanOrEqual(
      1e-8 * Math.max(1, golden.pearsonChiSquare),
    );
    expect(degreesOfFreedom).toBe(golden.degreesOfFreedom);
    if (golden.chance === null) expect(chance).toBeNull();
    else expect(Math.abs((chance ?? Number.NaN) - golden.chance)).toBeLessThan(1e-8);
  });
});

describe('recovers the constants that an experiment was simulated with', () => {
  // Ellis & Hong 2007, Seed Sci. Technol. 35:432-444 (abstract): KE and CW of wheat and rice with CH and CQ of the study.
  const withinThreeErrors = (golden: GoldenExperiment) => {
    const fit = fitted(golden.rows, golden);
    const truth = { KE: golden.truth[0], CW: golden.truth[1], CH: golden.truth[2], CQ: golden.truth[3] };
    for (const key of ['KE', 'CW', 'CH', 'CQ'] as const) {
      const error = fit.standardErrors[key];
      if (error === null) expect(fit.constants[key]).toBe(truth[key]);
      else expect(Math.abs(fit.constants[key] - truth[key]) / error, `${golden.name} ${key}`).toBeLessThan(3);
    }
    return fit;
  };

  test('wheat in twelve conditions, temperature held as published', () => {
    const fit = withinThreeErrors(goldenExperiment('wheat_three_lots_held'));
    // Closer than the paper's own standard errors, 0.431 and 0.366, since one experiment has no spread between studies.
    expect(Math.abs(fit.constants.KE - 8.498)).toBeLessThan(0.431);
    expect(Math.abs(fit.constants.CW - 4.836)).toBeLessThan(0.366);
  });
  test('wheat in sixteen conditions, temperature fitted', () => {
    withinThreeErrors(goldenExperiment('wheat_three_lots_fitted'));
  });
  test('rice of two lots, temperature fitted', () => {
    withinThreeErrors(goldenExperiment('rice_two_lots_fitted'));
  });
});

test('an experiment warmer than its held coefficients say shows as lack of fit, which widens every standard error', () => {
  const golden = goldenExperiment('held_at_other_than_true');
  const fit = fitted(golden.rows, golden);
  expect(fit.goodness.lacksFit).toBe(true);
  expect(fit.goodness.standardErrorFactor).toBeCloseTo(Math.sqrt(golden.pearsonChiSquare / golden.degreesOfFreedom), 8);
  const bare = Math.sqrt(fit.covariance[1]?.[1] as number);
  expect(fit.standardErrors.KE).toBeCloseTo(bare * fit.goodness.standardErrorFactor, 12);
  expect(fitted(golden.rows, { temperatureCoefficients: 'fitted' }).goodness.lacksFit).toBe(false);
});

test('an experiment that scatters as chance does keeps its standard errors', () => {
  const golden = goldenExperiment('one_lot_held');
  const fit = fitted(golden.rows, golden);
  expect(fit.goodness).toMatchObject({ lacksFit: false, standardErrorFactor: 1, shareBeforeStorage: null });
  expect(fit.standardErrors).toMatchObject({ CH: null, CQ: null });
});

test('counts met exactly leave nothing to judge the fit by', () => {
  const fit = fitted(goldenExperiment('as_many_counts_as_unknowns').rows, {});
  expect(fit.goodness).toMatchObject({ degreesOfFreedom: 0, chance: null, heterogeneity: null, lacksFit: false });
});

test('the common temperature coefficients are held unless others are asked for', () => {
  const { rows } = goldenExperiment('one_lot_held');
  const { CH, CQ } = COMMON_TEMPERATURE_COEFFICIENTS;
  expect(fitted(rows, {}).constants).toMatchObject({ CH, CQ });
  expect(fitted(rows, {})).toEqual(fitted(rows, { temperatureCoefficients: 'fixed', held: { CH, CQ } }));
});

test('names the conditions covered and what the covariance is of', () => {
  const fit = fitted(goldenExperiment('below_zero_degrees').rows, { temperatureCoefficients: 'fitted' });
  expect(fit.range).toMatchObject({
    ...{ moistureFromPercent: 5, moistureToPercent: 12 },
    ...{ temperatureFromC: -10, temperatureToC: 45 },
  });
  expect(fit.parameters).toEqual(['K lot 1', 'KE', 'CW', 'CH', 'CQ']);
  for (const [i, row] of fit.correlation.entries()) {
    expect(row[i]).toBe(1);
    for (const value of row) expect(Math.abs(value)).toBeLessThanOrEqual(1);
  }
});

test('fifty lots with a thousand counts are fitted in good time', () => {
  const { rows } = goldenExperiment('wheat_three_lots_held');
  const many = Array.from({ length: 16 }, (_, copy) =>
    rows.map((row) => ({ ...row, lot: `${row.lot} ${copy}` })),
  ).flat();
  const before = performance.now();
  expect(fitted(many, {}).lots).toHaveLength(48);
  expect(performance.now() - before).toBeLessThan(10_000);
});

test('names the share of scatter that the counts before storage bring', () => {
  const golden = goldenExperiment('uneven_dishes');
  const { shareBeforeStorage } = fitted(golden.rows, golden).goodness;
  // By hand: 24 of 144 dishes were set before storage, at the flat top of the curve, where dishes differ least.
  expect(shareBeforeStorage).toBeGreaterThan(0.02);
  expect(shareBeforeStorage).toBeLessThan(24 / 144 + 0.1);
});
