/** What the fit of a storage experiment gives. */
import type { LongevityConstants } from '../viability-equation';
import type { FittedRange } from './storage-row';

/** CH and CQ held at the common ones, or fitted to this experiment. */
export const TEMPERATURE_COEFFICIENTS = ['fixed', 'fitted'] as const;
export type TemperatureCoefficients = (typeof TEMPERATURE_COEFFICIENTS)[number];

export interface GoodnessOfFit {
  /** twice the log-likelihood lost against a model that meets every count */
  deviance: number;
  /** sum over counts of (seen - expected)^2 / variance; Infinity where a seed lies beyond all numbers off its curve */
  pearsonChiSquare: number;
  /** counts less unknowns, >= 0 */
  degreesOfFreedom: number;
  /** how often chance alone gives a chi-square as large; null without degrees of freedom */
  chance: number | null;
  /** chi-square over its degrees of freedom: 1 where the counts scatter as chance does; null without degrees of freedom */
  heterogeneity: number | null;
  /** the counts scatter more than chance explains (chance below 5 %) */
  lacksFit: boolean;
  /** what standard errors were multiplied by: the root of the heterogeneity where the fit lacks, otherwise 1 */
  standardErrorFactor: number;
  /** where the fit lacks: the share of chi-square that the counts before storage bring */
  shareBeforeStorage: number | null;
}

export interface StandardErrors {
  KE: number;
  CW: number;
  /** null where the coefficient was held */
  CH: number | null;
  CQ: number | null;
}

export interface StorageExperimentFit {
  ok: true;
  temperatureCoefficients: TemperatureCoefficients;
  constants: LongevityConstants;
  /** multiplied by goodness.standardErrorFactor */
  standardErrors: StandardErrors;
  /** K of each lot, probits, with its standard error (multiplied too) */
  lots: { lot: string; initialProbits: number; standardError: number }[];
  /** names of the rows and columns of `covariance`: 'K <lot>' for each lot, then KE, CW and, where fitted, CH, CQ */
  parameters: string[];
  /** inverse of the expected information, before any factor */
  covariance: number[][];
  /** covariance over the product of standard errors; 1 on the diagonal */
  correlation: number[][];
  goodness: GoodnessOfFit;
  range: FittedRange;
  conditions: number;
  counts: number;
}
