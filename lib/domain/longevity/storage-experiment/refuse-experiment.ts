/**
 * Why a storage experiment gives no constants: what it would have to hold. Found in the data before anything is fitted
 * wherever that is possible, because watching an iteration run away explains nothing.
 */
import type { StorageCondition } from '../viability-equation';
import { hasNoVariation } from './condition-fits';
import { conditionsOf, lotsOf, type StorageRow } from './storage-row';

export type ExperimentRefusalReason =
  | 'no-counts'
  | 'nothing-stored'
  | 'one-moisture'
  | 'too-few-temperatures'
  | 'lot-without-variation'
  | 'too-few-counts'
  | 'confounded'
  | 'no-decline'
  | 'separation'
  | 'did-not-converge';

export interface ExperimentRefusal {
  ok: false;
  reason: ExperimentRefusalReason;
  /** the reason as plain sentences, with what to do */
  message: string;
}

/** Temperatures needed to fit both the straight and the squared term. */
const TEMPERATURES_FOR_TWO_COEFFICIENTS = 3;

/**
 * Says what an experiment lacks; null when a fit can be tried.
 *
 * @param rows          counts with seed, from requireStorageRows
 * @param fitsWarmth    whether CH and CQ are to be fitted
 * Checked through fitStorageExperiment: tests/domain/longevity/storage-experiment/refusals.test.ts
 */
export function refuseExperiment(rows: readonly StorageRow[], fitsWarmth: boolean): ExperimentRefusal | null {
  if (rows.length === 0) return refuse('no-counts', 'There is no count with seed in it yet.');
  const conditions = conditionsOf(rows);
  if (conditions.length === 0) {
    return refuse('nothing-stored', 'All counts were taken before storage: count again after some time in store.');
  }
  const moistures = new Set(conditions.map((condition) => condition.moisturePercent));
  if (moistures.size === 1) {
    const only = inPercent([...moistures][0] as number);
    return refuse(
      'one-moisture',
      `All seed was stored at ${only} moisture, so how its life depends on moisture (CW) cannot be fitted. Store part of the seed drier or moister.`,
    );
  }
  const temperatures = new Set(conditions.map((condition) => condition.temperatureC));
  if (fitsWarmth && temperatures.size < TEMPERATURES_FOR_TWO_COEFFICIENTS) {
    const seen = [...temperatures].sort((a, b) => a - b).map(inDegrees);
    return refuse(
      'too-few-temperatures',
      `Seed was stored at ${seen.join(' and ')} only: CH and CQ need three temperatures. Hold them at the common ones instead.`,
    );
  }
  for (const lot of lotsOf(rows)) {
    if (!hasNoVariation(rows, lot)) continue;
    const all = rows.some((row) => row.lot === lot && row.germinated > 0);
    return refuse(
      'lot-without-variation',
      all
        ? `Every seed of lot ${lot} germinated in every count, so nothing says how it began or declines. Go on counting, or leave this lot out.`
        : `No seed of lot ${lot} germinated in any count, so nothing says how it declined. Leave this lot out.`,
    );
  }
  const unknowns = lotsOf(rows).length + (fitsWarmth ? 4 : 2);
  const cells = new Set(
    rows.map(({ lot, days, moisturePercent, temperatureC }) =>
      days === 0 ? `${lot} 0` : `${lot} ${days} ${moisturePercent} ${temperatureC}`,
    ),
  );
  if (cells.size < unknowns) {
    return refuse(
      'too-few-counts',
      `${cells.size} different counts cannot settle ${unknowns} unknowns (K of each lot, ${fitsWarmth ? 'KE, CW, CH, CQ' : 'KE and CW'}). Count at more times.`,
    );
  }
  return null;
}

/**
 * A refusal of the fit itself, in words.
 *
 * @param reason     from fitDecline
 * @param unchanged  conditions whose seed lost nothing measurable, for 'no-decline'
 * @param conditions  how many conditions the experiment has
 * @returns the refusal with its sentence
 * Checked in tests/domain/longevity/storage-experiment/refusals.test.ts
 */
export function explainNoFit(
  reason: 'confounded' | 'no-decline' | 'separation' | 'did-not-converge',
  unchanged: readonly StorageCondition[],
  conditions: number,
): ExperimentRefusal {
  switch (reason) {
    case 'confounded':
      return refuse(
        reason,
        'Moisture, temperature and lot change together in these counts, so their effects cannot be told apart. Store one lot at several moistures and one temperature as well.',
      );
    case 'no-decline': {
      const where = unchanged
        .map(({ moisturePercent, temperatureC }) => `${inPercent(moisturePercent)} and ${inDegrees(temperatureC)}`)
        .join('; ');
      return refuse(
        reason,
        unchanged.length === conditions
          ? 'No decline was seen in any condition: the seed outlived the experiment so far. Go on counting, or store part of it warmer and moister.'
          : `The seed stored at ${where} has not declined, and the others alone do not settle the constants. Go on counting.`,
      );
    }
    case 'separation':
      return refuse(
        reason,
        'The seed passed from nearly all alive to nearly all dead between two counts, so its rate has no upper end. Counts in between are needed.',
      );
    case 'did-not-converge':
      return refuse(
        reason,
        'The calculation did not settle on one answer: the counts say too little about the constants.',
      );
  }
}

function refuse(reason: ExperimentRefusalReason, message: string): ExperimentRefusal {
  return { ok: false, reason, message };
}

const inPercent = (value: number): string => `${Math.round(value * 100) / 100} %`;
const inDegrees = (value: number): string => `${Math.round(value * 10) / 10} °C`.replace('-', '\u2212');
