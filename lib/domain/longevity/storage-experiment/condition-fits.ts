/**
 * The first look at a storage experiment: each condition by itself. Its seed loses one probit in sigma days, whatever
 * the equation says of moisture and temperature; where log sigma lies along a line against log moisture, the equation
 * holds. The figures also start the fit of the whole.
 */

import { fitProbit } from '../../statistics/probit-regression';
import type { StorageCondition } from '../viability-equation';
import type { DeclinePoint } from './decline-likelihood';
import { fitDecline } from './decline-model';
import { conditionOf, conditionsOf, isOf, lotsOf, type StorageRow } from './storage-row';

export interface ConditionFigures extends StorageCondition {
  /** counts with seed: of this condition, and those of its lots before storage */
  counts: number;
}

export interface ConditionFit extends ConditionFigures {
  ok: true;
  /** days in which one probit is lost, by this condition alone */
  sigmaDays: number;
  log10Sigma: number;
  /** of log10Sigma, from the expected information */
  standardErrorLog10: number;
  /** K of each lot by this condition alone, probits */
  initialProbits: { lot: string; probits: number }[];
}

export interface ConditionRefusal extends ConditionFigures {
  ok: false;
  reason: 'too-few-counts' | 'no-variation' | 'no-decline' | 'separation' | 'did-not-converge';
  /** the reason as a plain sentence */
  message: string;
}

const MESSAGES: Record<ConditionRefusal['reason'], string> = {
  'too-few-counts': 'Too few counts to draw a line.',
  'no-variation': 'In a lot all the seeds germinated every time, or none did: count again later, or sooner next time.',
  'no-decline': 'No decline was seen yet: count again later.',
  separation: 'The seed died between two counts: how fast is not known.',
  'did-not-converge': 'The counts say too little about how fast the seed declined.',
};

/**
 * Fits each condition by itself: one sigma, and K of each of its lots.
 *
 * @param rows  counts with seed, from requireStorageRows
 * @returns one entry a condition, by temperature, then by moisture; those that cannot be fitted say why
 * Checked against fitProbit and R: tests/domain/longevity/storage-experiment/condition-fits.test.ts
 */
export function fitConditions(rows: readonly StorageRow[]): (ConditionFit | ConditionRefusal)[] {
  return conditionsOf(rows).map((condition) => fitCondition(rows, condition));
}

/**
 * The counts that a condition's own line rests on: its own, and those of its lots taken before any storage.
 *
 * @param rows       checked counts
 * @param condition  percent of fresh weight, degrees C
 * @returns rows as given, in their order
 * Checked through fitConditions: tests/domain/longevity/storage-experiment/condition-fits.test.ts
 */
export function rowsOfCondition(rows: readonly StorageRow[], condition: StorageCondition): StorageRow[] {
  const own = rows.filter((row) => isOf(row, condition));
  const lots = new Set(lotsOf(own));
  return rows.filter((row) => isOf(row, condition) || (conditionOf(row) === null && lots.has(row.lot)));
}

function fitCondition(rows: readonly StorageRow[], condition: StorageCondition): ConditionFit | ConditionRefusal {
  const own = rowsOfCondition(rows, condition);
  const figures = { ...condition, counts: own.length };
  const refuse = (reason: ConditionRefusal['reason']): ConditionRefusal => ({
    ...figures,
    ok: false,
    reason,
    message: MESSAGES[reason],
  });
  const lots = lotsOf(own);
  const times = new Set(own.map((row) => `${row.lot} ${row.days}`));
  if (times.size < lots.length + 1) return refuse('too-few-counts');
  if (lots.some((lot) => hasNoVariation(own, lot))) return refuse('no-variation');

  const points = own.map(
    ({ lot, days, sown, germinated }): DeclinePoint => ({
      ...{ lot: lots.indexOf(lot), days, sown, germinated },
      ...{ offset: 0, columns: days > 0 ? [1] : [0] },
    }),
  );
  const fit = fitDecline(points, lots.length, startingRates(own));
  if (!fit.ok) return refuse(fit.reason === 'confounded' ? 'too-few-counts' : fit.reason);
  const logRate = fit.coefficients[0] as number;
  return {
    ...figures,
    ok: true,
    sigmaDays: Math.exp(-logRate),
    log10Sigma: -logRate / Math.LN10,
    standardErrorLog10: Math.sqrt(fit.covariance[lots.length]?.[lots.length] as number) / Math.LN10,
    initialProbits: lots.map((lot, index) => ({ lot, probits: fit.initialProbits[index] as number })),
  };
}

/**
 * Whether all seeds of a lot germinated in every count, or none did: its K would be infinite.
 *
 * @param rows  checked counts
 * @param lot   its name in the rows
 * @returns true also where the lot has no row
 * Checked through refuseExperiment: tests/domain/longevity/storage-experiment/refusals.test.ts
 */
export function hasNoVariation(rows: readonly StorageRow[], lot: string): boolean {
  const own = rows.filter((row) => row.lot === lot);
  return own.every((row) => row.germinated === row.sown) || own.every((row) => row.germinated === 0);
}

/** Natural logarithms of rates to start from: the line through all lots together, and two guesses around it. */
function startingRates(rows: readonly StorageRow[]): number[][] {
  const longest = Math.max(...rows.map((row) => row.days));
  const pooled = fitProbit({
    x: rows.map((row) => row.days),
    successes: rows.map((row) => row.germinated),
    trials: rows.map((row) => row.sown),
  });
  const guesses = [[Math.log(0.3 / longest)], [Math.log(3 / longest)]];
  return pooled.ok && pooled.slope < 0 ? [[Math.log(-pooled.slope)], ...guesses] : guesses;
}
