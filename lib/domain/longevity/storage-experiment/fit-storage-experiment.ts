/**
 * Longevity constants of a species from a storage experiment, by one maximum-likelihood probit model over all counts:
 *
 *   probit(p) = K_lot - days / sigma(m, t),   log10 sigma = KE - CW log10 m - CH t - CQ t^2
 *
 * with binomial counts. Each lot has its own K; the four constants are common to all. CH and CQ are held at the common
 * ones, or fitted too where three temperatures allow it.
 */
import { COMMON_TEMPERATURE_COEFFICIENTS } from '../../reference/longevity-constants';
import { fitConditions } from './condition-fits';
import { type DeclinePoint, probitsLost } from './decline-likelihood';
import { fitDecline } from './decline-model';
import type { StandardErrors, StorageExperimentFit, TemperatureCoefficients } from './experiment-fit';
import { goodnessOfFit } from './goodness-of-fit';
import { type ExperimentRefusal, explainNoFit, refuseExperiment } from './refuse-experiment';
import { startingConstants } from './starting-constants';
import { conditionsOf, fittedRangeOf, lotsOf, requireStorageRows, type StorageRow } from './storage-row';

export interface FitOptions {
  /** default 'fixed' */
  temperatureCoefficients?: TemperatureCoefficients;
  /** what CH and CQ are held at; default the coefficients common to eight species */
  held?: { CH: number; CQ: number };
}

/**
 * Fits a storage experiment.
 *
 * @param rows     its counts; rows without seed are passed over
 * @param options  see FitOptions
 * @returns constants with standard errors, covariance, goodness of fit and the conditions covered; or a refusal with its
 *   reason in plain words, never NaN
 * @throws RangeError naming the row and the value when a row is impossible
 * @see Ellis & Roberts (1980), Ann. Bot. 45:13-30 (the equation, from memory); Finney (1971), Probit Analysis
 * Checked against R (glm iterated on the linearised model, from optim): tests/golden/storage-experiment.json
 */
export function fitStorageExperiment(
  rows: readonly StorageRow[],
  options: FitOptions = {},
): StorageExperimentFit | ExperimentRefusal {
  const { temperatureCoefficients = 'fixed', held = COMMON_TEMPERATURE_COEFFICIENTS } = options;
  const fitsWarmth = temperatureCoefficients === 'fitted';
  const counts = requireStorageRows(rows);
  const refusal = refuseExperiment(counts, fitsWarmth);
  if (refusal) return refusal;

  const lots = lotsOf(counts);
  const indexOfLot = new Map(lots.map((lot, index) => [lot, index]));
  const points = counts.map((row) => pointOf(row, indexOfLot.get(row.lot) as number, fitsWarmth ? null : held));
  // ln rate = -ln 10 log10 sigma, so the coefficients are the constants times ln 10, KE with its sign turned.
  const starts = startingConstants(counts, fitConditions(counts), fitsWarmth, held).map(({ KE, CW, CH, CQ }) =>
    [-KE, CW, ...(fitsWarmth ? [CH, CQ] : [])].map((value) => value * Math.LN10),
  );
  const fit = fitDecline(points, lots.length, starts);
  if (!fit.ok) {
    const unchanged = conditionsOf(fit.withoutDecline.map((index) => counts[index] as StorageRow));
    return explainNoFit(fit.reason, unchanged, conditionsOf(counts).length);
  }

  const scales = [...lots.map(() => 1), -1 / Math.LN10, ...fit.coefficients.slice(1).map(() => 1 / Math.LN10)];
  const covariance = fit.covariance.map((row, i) =>
    row.map((value, j) => value * (scales[i] as number) * (scales[j] as number)),
  );
  const goodness = goodnessOfFit(
    points.map((point) => ({
      ...{ days: point.days, sown: point.sown, germinated: point.germinated },
      probit: (fit.initialProbits[point.lot] as number) - probitsLost(point, fit.coefficients),
    })),
    fit.degreesOfFreedom,
  );
  const errorOf = (i: number) => Math.sqrt(covariance[i]?.[i] as number) * goodness.standardErrorFactor;
  const first = lots.length;
  const [KE, CW, CH, CQ] = fit.coefficients.map((value, j) => value * (scales[first + j] as number)) as [
    ...[number, number],
    ...(number | undefined)[],
  ];
  const standardErrors: StandardErrors = {
    KE: errorOf(first),
    CW: errorOf(first + 1),
    CH: fitsWarmth ? errorOf(first + 2) : null,
    CQ: fitsWarmth ? errorOf(first + 3) : null,
  };
  return {
    ok: true,
    temperatureCoefficients,
    constants: { KE, CW, CH: CH ?? held.CH, CQ: CQ ?? held.CQ },
    standardErrors,
    lots: lots.map((lot, i) => ({
      lot,
      initialProbits: fit.initialProbits[i] as number,
      standardError: errorOf(i),
    })),
    parameters: [...lots.map((lot) => `K ${lot}`), 'KE', 'CW', ...(fitsWarmth ? ['CH', 'CQ'] : [])],
    covariance,
    correlation: covariance.map((row, i) =>
      row.map((value, j) => (i === j ? 1 : value / Math.sqrt((covariance[i]?.[i] ?? 0) * (covariance[j]?.[j] ?? 0)))),
    ),
    goodness,
    range: fittedRangeOf(counts),
    conditions: conditionsOf(counts).length,
    counts: counts.length,
  };
}

function pointOf(row: StorageRow, lot: number, held: { CH: number; CQ: number } | null): DeclinePoint {
  const { days, sown, germinated } = row;
  if (days === 0) return { lot, days, sown, germinated, offset: 0, columns: held ? [0, 0] : [0, 0, 0, 0] };
  const logMoisture = Math.log10(row.moisturePercent as number);
  const t = row.temperatureC as number;
  const columns = held ? [1, logMoisture] : [1, logMoisture, t, t * t];
  return { lot, days, sown, germinated, offset: held ? Math.LN10 * (held.CH * t + held.CQ * t * t) : 0, columns };
}
