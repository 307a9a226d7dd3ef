/** Input of the commands about storage experiments. */
import { z } from 'zod';
import { TEMPERATURE_COEFFICIENTS } from '../../domain/longevity/storage-experiment/experiment-fit';
import { choice, idOf, versionField } from '../choice-field';
import { blankToUndefined, longText, optionalField, shortText } from '../field-schemas';
import { type ExperimentProblem, readExperiment } from './read-experiment';

/** Characters of a pasted table: two thousand rows with room. */
const MAX_TABLE_LENGTH = 400_000;
const TOO_LONG = 'The table is too long: choose it as a file, or add dishes together.';
const MOST_PROBLEMS_NAMED = 12;

/** Pasted text, or the bytes of a chosen file, read into rows; what stands in the way is said in a line each. */
const table = z
  .preprocess(
    blankToUndefined,
    z.union([z.string().max(MAX_TABLE_LENGTH, TOO_LONG), z.instanceof(Uint8Array)], {
      error: 'Paste the counts, or choose a file.',
    }),
  )
  .transform((source, context) => {
    const read = readExperiment(source);
    if (read.ok) return read.rows;
    context.addIssue({ code: 'custom', message: problemsInWords(read.problems) });
    return z.NEVER;
  });

const whatItIs = {
  name: shortText,
  /** blank where a crop is chosen: then the crop's own */
  species: optionalField(shortText),
  cropId: optionalField(idOf('crop')),
  notes: optionalField(longText),
  table,
};

function speciesOrCrop(input: { species?: string; cropId?: string }, context: z.RefinementCtx): void {
  if (input.species !== undefined || input.cropId !== undefined) return;
  context.addIssue({ code: 'custom', path: ['species'], message: 'Choose a crop, or write the species.' });
}

/**
 * Problems as lines of text, the first dozen of them.
 *
 * Checked in tests/schemas/storage-experiment/read-experiment.test.ts
 */
export function problemsInWords(problems: readonly ExperimentProblem[]): string {
  const named = problems.slice(0, MOST_PROBLEMS_NAMED).map(({ line, column, message }) => {
    const where = [line === null ? null : `Line ${line}`, column].filter(Boolean).join(', ');
    return where ? `${where}: ${message}` : message;
  });
  const more = problems.length - named.length;
  return [...named, ...(more > 0 ? [`And ${more} more.`] : [])].join('\n');
}

export const createStorageExperimentSchema = z.object(whatItIs).superRefine(speciesOrCrop);

export const updateStorageExperimentSchema = z
  .object({ ...whatItIs, id: idOf('storage experiment'), version: versionField })
  .superRefine(speciesOrCrop);

export const deleteStorageExperimentSchema = z.object({
  id: idOf('storage experiment'),
  version: versionField,
  sure: z.literal('on', { error: 'Tick this to remove the experiment.' }),
});

export const saveExperimentConstantsSchema = z.object({
  experimentId: idOf('storage experiment'),
  version: versionField,
  name: shortText,
  coefficients: choice(TEMPERATURE_COEFFICIENTS, 'temperature coefficients'),
});
