/*
 * The two shapes of germination times that can be fitted, as standard distributions of z = (log day - log middle) / spread.
 * Both are symmetric on a logarithmic scale of days; the log-logistic has the longer tails.
 */
import { logOdds } from '../../statistics/log-odds';
import { normalCdf, normalDensity, normalQuantile, normalUpperTail } from '../../statistics/normal-distribution';

export const CURVE_SHAPES = ['log-logistic', 'log-normal'] as const;
export type CurveShape = (typeof CURVE_SHAPES)[number];

export interface StandardDistribution {
  /** chance of at most z */
  cdf: (z: number) => number;
  /** chance of more than z, with its own digits in the far tail */
  upperTail: (z: number) => number;
  density: (z: number) => number;
  /** derivative of the density */
  densitySlope: (z: number) => number;
  /** z below which the given chance lies; chance in (0, 1) */
  quantile: (chance: number) => number;
  /** standard deviation of z */
  deviation: number;
}

// Written for the side that is small, so that neither tail is one minus the other.
const logisticTail = (z: number) => (z > 0 ? Math.exp(-z) / (1 + Math.exp(-z)) : 1 / (1 + Math.exp(z)));
const logisticDensity = (z: number) => logisticTail(z) * logisticTail(-z);

/**
 * The standard distribution behind each shape.
 * Checked through fitGerminationCurve against R (`plogis`, `pnorm`, `survreg`): tests/golden/germination-time-course.json
 */
export const STANDARD_DISTRIBUTIONS: Record<CurveShape, StandardDistribution> = {
  'log-logistic': {
    cdf: (z) => logisticTail(-z),
    upperTail: logisticTail,
    density: logisticDensity,
    densitySlope: (z) => logisticDensity(z) * (logisticTail(z) - logisticTail(-z)),
    quantile: logOdds,
    deviation: Math.PI / Math.sqrt(3),
  },
  'log-normal': {
    cdf: normalCdf,
    upperTail: normalUpperTail,
    density: normalDensity,
    densitySlope: (z) => -z * normalDensity(z),
    quantile: normalQuantile,
    deviation: 1,
  },
};
