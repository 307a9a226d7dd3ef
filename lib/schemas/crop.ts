/** Input of the commands about crops: what the crop is, and the bank's own figures for it. */
import { z } from 'zod';
import { LIFE_CYCLES, POLLINATIONS, STORAGE_BEHAVIOURS } from '../domain/reference/crop-facts';

import { THRESHOLD_KINDS } from '../domain/regrow/threshold-kinds';
import { choice, idOf, tickBox, versionField } from './choice-field';
import { countBetween, longText, numberBetween, optionalField, plantCount, shortText } from './field-schemas';

/** percent; a threshold of 0 would never be passed, one of 100 always */
const THRESHOLD_PERCENT = { min: 1, max: 99 } as const;
/** percent of viable seed that gives a plant in the bed */
const EMERGENCE_PERCENT = { min: 1, max: 100 } as const;
/** probits of initial viability: 0.1 % to 99.99 % */
const INITIAL_PROBITS = { min: -3, max: 4 } as const;
/** natural logarithm of how fast a lot ages against the published rate: a twentieth to twenty times */
const LOG_RATE = { min: -3, max: 3 } as const;
const STANDARD_DEVIATION = { min: 0.01, max: 5 } as const;

const asProportion = (percent: number) => percent / 100;

const whatItIs = {
  name: shortText,
  scientificName: shortText,
  family: shortText,
  pollination: choice(POLLINATIONS, 'pollination'),
  lifeCycle: choice(LIFE_CYCLES, 'life cycle'),
  storageBehaviour: choice(STORAGE_BEHAVIOURS, 'storage behaviour'),
};

const ownFigures = {
  plantsNeeded: optionalField(plantCount),
  thresholdKind: optionalField(choice(THRESHOLD_KINDS, 'kind of threshold')),
  /** typed as percent, kept as proportion 0-1 */
  thresholdPercent: optionalField(numberBetween(THRESHOLD_PERCENT, '%').transform(asProportion)),
  sowingMonth: optionalField(countBetween({ min: 1, max: 12 }, 'the month')),
  /** typed as percent, kept as proportion 0-1 */
  emergencePercent: optionalField(numberBetween(EMERGENCE_PERCENT, '%').transform(asProportion)),
  longevityConstantsId: optionalField(idOf('longevity constants')),
  constantsBorrowed: tickBox,
  borrowedBecause: optionalField(shortText),
  priorInitialMean: optionalField(numberBetween(INITIAL_PROBITS, '')),
  priorInitialSd: optionalField(numberBetween(STANDARD_DEVIATION, '')),
  priorLogRateMean: optionalField(numberBetween(LOG_RATE, '')),
  priorLogRateSd: optionalField(numberBetween(STANDARD_DEVIATION, '')),
  notes: optionalField(longText),
};

const PAIRS = [
  ['thresholdKind', 'thresholdPercent', 'A threshold needs its kind and its figure: fill in both or neither.'],
  ['priorInitialMean', 'priorInitialSd', 'A prior needs its middle and its spread: fill in both or neither.'],
  ['priorLogRateMean', 'priorLogRateSd', 'A prior needs its middle and its spread: fill in both or neither.'],
] as const;

/** Figures that mean something only together. */
function bothOrNeither(input: Record<string, unknown>, context: z.RefinementCtx): void {
  for (const [first, second, message] of PAIRS) {
    const missing = input[first] === undefined ? first : second;
    if ((input[first] === undefined) !== (input[second] === undefined)) {
      context.addIssue({ code: 'custom', path: [missing], message });
    }
  }
}

export const createCropSchema = z.object({ ...whatItIs, ...ownFigures }).superRefine(bothOrNeither);

/** What a crop of the reference is comes from the reference: its form leaves those fields out. */
export const updateCropSchema = z
  .object({
    id: idOf('crop'),
    version: versionField,
    name: optionalField(whatItIs.name),
    scientificName: optionalField(whatItIs.scientificName),
    family: optionalField(whatItIs.family),
    pollination: optionalField(whatItIs.pollination),
    lifeCycle: optionalField(whatItIs.lifeCycle),
    storageBehaviour: optionalField(whatItIs.storageBehaviour),
    ...ownFigures,
  })
  .superRefine(bothOrNeither);
