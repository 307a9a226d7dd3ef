import type { StorageExperimentFit } from '@/lib/domain/longevity/storage-experiment/experiment-fit';
import { fitStorageExperiment } from '@/lib/domain/longevity/storage-experiment/fit-storage-experiment';
import { COMMON_TEMPERATURE_COEFFICIENTS } from '@/lib/domain/reference/longevity-constants';
import { longevityConstantsSchema } from '@/lib/schemas/longevity-constants';
import { saveExperimentConstantsSchema } from '@/lib/schemas/storage-experiment/experiment-input';
import { AppError, notFound } from '../app-error';
import { defineCommand } from './command';
import { addOwnConstants } from './own-constants';
import { refuseStale } from './stale-version';
import { readExperimentState } from './storage-experiment-rows';

/** Fits a storage experiment as it stands and keeps its constants as the bank's own, with their errors and range. */
export const saveExperimentConstants = defineCommand({
  name: 'save-experiment-constants',
  role: 'steward',
  schema: saveExperimentConstantsSchema,
  async run(context, { experimentId, version, name, coefficients }): Promise<{ id: string }> {
    const experiment = await readExperimentState(context.tx, experimentId);
    if (!experiment) throw notFound('This storage experiment');
    const record = { entity: 'storage experiment', entityId: experimentId, called: `Experiment ${experiment.name}` };
    await refuseStale(context.tx, record, version, experiment.version, { counts: 'number of counts', name: 'name' });
    const fit = fitStorageExperiment(experiment.rows, { temperatureCoefficients: coefficients });
    if (!fit.ok) throw new AppError('refused', `There are no constants to save. ${fit.message}`);

    const { range, constants, standardErrors } = fit;
    const data = {
      name,
      species: experiment.species,
      ...rounded(constants),
      moistureFromPercent: range.moistureFromPercent,
      moistureToPercent: range.moistureToPercent,
      temperatureFromC: range.temperatureFromC,
      temperatureToC: range.temperatureToC,
      source: sourceOf(experiment.name, fit, context.today),
    };
    const checked = longevityConstantsSchema.safeParse(data);
    if (!checked.success) {
      const fields = [...new Set(checked.error.issues.map((issue) => String(issue.path[0])))];
      throw new AppError(
        'refused',
        `These constants are beyond what seed can show (${fields.join(', ')}), so they are not saved. Look at the cautions above, or hold CH and CQ at the common ones.`,
      );
    }
    return addOwnConstants(context, {
      ...checked.data,
      standardErrorKE: round(standardErrors.KE, DIGITS.KE),
      standardErrorCW: round(standardErrors.CW, DIGITS.CW),
    });
  },
});

/** Decimals as papers print them, one more than their errors deserve. */
const DIGITS = { KE: 4, CW: 4, CH: 5, CQ: 7 } as const;

const round = (value: number, digits: number) => Number(value.toFixed(digits));

function rounded(constants: StorageExperimentFit['constants']) {
  return {
    KE: round(constants.KE, DIGITS.KE),
    CW: round(constants.CW, DIGITS.CW),
    CH: round(constants.CH, DIGITS.CH),
    CQ: round(constants.CQ, DIGITS.CQ),
  };
}

function sourceOf(experiment: string, fit: StorageExperimentFit, day: string): string {
  const { CH, CQ } = fit.standardErrors;
  const warmth =
    CH === null || CQ === null
      ? `CH and CQ held at those common to eight species (${COMMON_TEMPERATURE_COEFFICIENTS.mark}: Dickie and others 1990)`
      : `CH and CQ fitted too, standard errors ${CH.toPrecision(2)} and ${CQ.toPrecision(2)}`;
  const scatter = fit.goodness.lacksFit
    ? `; counts scattered more than by chance, standard errors widened ${fit.goodness.standardErrorFactor.toFixed(2)} times`
    : '';
  const longest = Math.round(fit.range.longestDays);
  return `Storage experiment “${experiment}” of this bank, fitted ${day}: ${fit.counts} counts in ${fit.conditions} conditions over ${longest} days; ${warmth}${scatter}.`;
}
