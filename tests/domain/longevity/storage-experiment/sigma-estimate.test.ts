import { expect, test } from 'vitest';
import { fitStorageExperiment } from '../../../../lib/domain/longevity/storage-experiment/fit-storage-experiment';
import { sigmaEstimate, usualCondition } from '../../../../lib/domain/longevity/storage-experiment/sigma-estimate';
import { sigmaDays } from '../../../../lib/domain/longevity/viability-equation';
import { goldenExperiment } from './simulated-experiments';

function fitted(name: string) {
  const golden = goldenExperiment(name);
  const fit = fitStorageExperiment(golden.rows, golden);
  if (!fit.ok) throw new Error(fit.message);
  return fit;
}

test('the error of log sigma is that of KE where the logarithm of moisture and temperature are 0', () => {
  const fit = fitted('one_lot_fitted');
  const { days, lower, upper, standardErrorLog10 } = sigmaEstimate(fit, { moisturePercent: 1, temperatureC: 0 });
  expect(days).toBe(sigmaDays(fit.constants, { moisturePercent: 1, temperatureC: 0 }));
  expect(standardErrorLog10).toBeCloseTo(fit.standardErrors.KE, 12);
  expect(Math.log10(upper / days)).toBeCloseTo(1.959964 * fit.standardErrors.KE, 6);
  expect(Math.log10(days / lower)).toBeCloseTo(1.959964 * fit.standardErrors.KE, 6);
});

test('sigma is surest in the midst of what was tried and far surer than KE alone', () => {
  const fit = fitted('one_lot_held');
  const at = (moisturePercent: number) => sigmaEstimate(fit, { moisturePercent, temperatureC: 35 }).standardErrorLog10;
  expect(at(8)).toBeLessThan(at(5));
  expect(at(8)).toBeLessThan(at(12));
  expect(at(8)).toBeLessThan(fit.standardErrors.KE / 2);
});

test('says whether the experiment covered the condition', () => {
  const fit = fitted('one_lot_held');
  const inside = (moisturePercent: number, temperatureC: number) =>
    sigmaEstimate(fit, { moisturePercent, temperatureC }).insideRange;
  expect([
    inside(5, 20),
    inside(12, 45),
    inside(4.99, 20),
    inside(12.01, 45),
    inside(8, 19.9),
    inside(8, 45.1),
  ]).toEqual([...[true, true, false, false, false, false]]);
});

test('speaks of 20 °C and 8 %, or of the nearest that was tried', () => {
  expect(usualCondition(fitted('one_lot_held'))).toEqual({ moisturePercent: 8, temperatureC: 20 });
  expect(usualCondition(fitted('one_temperature_held'))).toEqual({ moisturePercent: 8, temperatureC: 40 });
});
