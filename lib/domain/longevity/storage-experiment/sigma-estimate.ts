import { normalQuantile } from '../../statistics/normal-distribution';
import { type StorageCondition, sigmaDays } from '../viability-equation';
import type { StorageExperimentFit } from './experiment-fit';

export interface SigmaEstimate {
  /** days in which one probit is lost */
  days: number;
  lower: number;
  upper: number;
  /** of log10 sigma, multiplied by the fit's factor */
  standardErrorLog10: number;
  /** whether the condition lies among those of the experiment */
  insideRange: boolean;
}

/**
 * Days in which one probit is lost at a condition, with an interval from all fitted constants together (delta method:
 * log10 sigma is linear in them). Constants that were held count as known.
 *
 * @param fit        a fit that was reached
 * @param condition  moisture in percent of fresh weight, temperature in degrees C
 * @param level      probability in (0, 1); default 0.95
 * @returns days with their interval, normal on the logarithm
 * @throws RangeError when moisture or temperature is outside what sigmaDays takes
 * Checked in tests/domain/longevity/storage-experiment/sigma-estimate.test.ts
 */
export function sigmaEstimate(fit: StorageExperimentFit, condition: StorageCondition, level = 0.95): SigmaEstimate {
  const days = sigmaDays(fit.constants, condition);
  const { moisturePercent: m, temperatureC: t } = condition;
  const first = fit.lots.length;
  const gradient = [1, -Math.log10(m), -t, -t * t].slice(0, fit.parameters.length - first);
  let variance = 0;
  for (const [i, value] of gradient.entries()) {
    for (const [j, other] of gradient.entries()) {
      variance += value * other * (fit.covariance[first + i]?.[first + j] as number);
    }
  }
  const standardErrorLog10 = Math.sqrt(Math.max(0, variance)) * fit.goodness.standardErrorFactor;
  const factor = 10 ** (normalQuantile(0.5 + level / 2) * standardErrorLog10);
  const { range } = fit;
  return {
    days,
    lower: days / factor,
    upper: days * factor,
    standardErrorLog10,
    insideRange:
      m >= range.moistureFromPercent &&
      m <= range.moistureToPercent &&
      t >= range.temperatureFromC &&
      t <= range.temperatureToC,
  };
}

/**
 * A condition to speak of: the mildest that both a store and the experiment know, 20 °C and 8 % moisture, or the nearest
 * that the experiment covered.
 *
 * @param fit  from fitStorageExperiment
 * @returns percent of fresh weight and degrees C, inside the range of the experiment
 * Checked in tests/domain/longevity/storage-experiment/sigma-estimate.test.ts
 */
export function usualCondition({ range }: StorageExperimentFit): StorageCondition {
  const within = (value: number, from: number, to: number) => Math.min(Math.max(value, from), to);
  return {
    moisturePercent: within(8, range.moistureFromPercent, range.moistureToPercent),
    temperatureC: within(20, range.temperatureFromC, range.temperatureToC),
  };
}
