/** What the pictures of a storage experiment draw, in data units; the drawing reckons nothing. */
import { binomialInterval } from '../../statistics/binomial-interval';
import { normalCdf, normalQuantile } from '../../statistics/normal-distribution';
import { type StorageCondition, sigmaDays } from '../viability-equation';
import { type ConditionFit, type ConditionRefusal, rowsOfCondition } from './condition-fits';
import type { StorageExperimentFit } from './experiment-fit';
import { lotsOf, type StorageRow } from './storage-row';

export interface SeenPoint {
  days: number;
  sown: number;
  germinated: number;
  /** 0-1, with its 95 % Wilson interval */
  proportion: number;
  lower: number;
  upper: number;
}

export interface LotCurve {
  lot: string;
  points: SeenPoint[];
  /** the fitted curve from day 0 to the end of the panel; empty where nothing was fitted */
  curve: { days: number; proportion: number }[];
}

export interface SurvivalPanel {
  condition: StorageCondition;
  /** end of the time axis, days */
  longestDays: number;
  lots: LotCurve[];
  /** whose curve is drawn: of the whole experiment, of this condition alone, or none */
  curveOf: 'experiment' | 'condition' | 'none';
}

const CURVE_POINTS = 60;

/**
 * A panel for each condition: what was counted, and the curve of the fit.
 *
 * @param rows        counts with seed
 * @param conditions  each condition's own fit
 * @param fit         the fit of the whole, or null; then each condition's own curve is drawn where there is one
 * Checked in tests/domain/longevity/storage-experiment/experiment-pictures.test.ts
 */
export function survivalPanels(
  rows: readonly StorageRow[],
  conditions: readonly (ConditionFit | ConditionRefusal)[],
  fit: StorageExperimentFit | null,
): SurvivalPanel[] {
  return conditions.map((own) => {
    const condition = { moisturePercent: own.moisturePercent, temperatureC: own.temperatureC };
    const counts = rowsOfCondition(rows, condition);
    const longestDays = Math.max(...counts.map((row) => row.days));
    const line = (lot: string) => {
      if (fit) {
        const K = fit.lots.find((one) => one.lot === lot)?.initialProbits as number;
        return { K, sigma: sigmaDays(fit.constants, condition) };
      }
      if (!own.ok) return null;
      return { K: own.initialProbits.find((one) => one.lot === lot)?.probits as number, sigma: own.sigmaDays };
    };
    return {
      condition,
      longestDays,
      lots: lotsOf(counts).map((lot) => ({
        lot,
        points: pointsOf(counts.filter((row) => row.lot === lot)),
        curve: curveOf(line(lot), longestDays),
      })),
      curveOf: fit ? 'experiment' : own.ok ? 'condition' : 'none',
    };
  });
}

/** Dishes of one day are one point. */
function pointsOf(rows: readonly StorageRow[]): SeenPoint[] {
  const byDay = new Map<number, { sown: number; germinated: number }>();
  for (const { days, sown, germinated } of rows) {
    const sum = byDay.get(days) ?? { sown: 0, germinated: 0 };
    byDay.set(days, { sown: sum.sown + sown, germinated: sum.germinated + germinated });
  }
  return [...byDay]
    .sort(([a], [b]) => a - b)
    .map(([days, { sown, germinated }]) => {
      const { lower, upper } = binomialInterval({ successes: germinated, trials: sown });
      return { days, sown, germinated, proportion: germinated / sown, lower, upper };
    });
}

function curveOf(line: { K: number; sigma: number } | null, longestDays: number): LotCurve['curve'] {
  if (!line) return [];
  return Array.from({ length: CURVE_POINTS + 1 }, (_, i) => {
    const days = (longestDays * i) / CURVE_POINTS;
    return { days, proportion: normalCdf(line.K - days / line.sigma) };
  });
}

export interface MoisturePicture {
  /** each condition's own sigma with its 95 % interval */
  points: (StorageCondition & { sigmaDays: number; lower: number; upper: number })[];
  /** the fit of the whole: a straight line on logarithmic axes for each temperature; empty without a fit */
  lines: { temperatureC: number; ends: { moisturePercent: number; sigmaDays: number }[] }[];
}

/**
 * Sigma against moisture, both to be drawn on logarithmic axes: where the equation holds, the conditions of one
 * temperature lie along a line, and the lines of all temperatures run side by side.
 *
 * @param conditions  from fitConditions
 * @param fit         of all conditions together, or null where there is none
 * @returns points with their 95 % intervals, and the lines of the fit
 * Checked in tests/domain/longevity/storage-experiment/experiment-pictures.test.ts
 */
export function moisturePicture(
  conditions: readonly (ConditionFit | ConditionRefusal)[],
  fit: StorageExperimentFit | null,
): MoisturePicture {
  const z = normalQuantile(0.975);
  const points = conditions
    .filter((own) => own.ok)
    .map(({ moisturePercent, temperatureC, sigmaDays: sigma, standardErrorLog10 }) => {
      const factor = 10 ** (z * standardErrorLog10);
      return { moisturePercent, temperatureC, sigmaDays: sigma, lower: sigma / factor, upper: sigma * factor };
    });
  const temperatures = [...new Set(conditions.map((own) => own.temperatureC))];
  const lines = !fit
    ? []
    : temperatures.map((temperatureC) => ({
        temperatureC,
        ends: [fit.range.moistureFromPercent, fit.range.moistureToPercent].map((moisturePercent) => ({
          moisturePercent,
          sigmaDays: sigmaDays(fit.constants, { moisturePercent, temperatureC }),
        })),
      }));
  return { points, lines };
}
