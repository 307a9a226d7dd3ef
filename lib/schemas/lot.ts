/** Input of the commands about lots. */
import { z } from 'zod';
import { ISOLATION_KEYS } from '../domain/pollination/isolation';
import { choice, idOf, versionField } from './choice-field';
import {
  countBetween,
  longText,
  lotNumber,
  optionalField,
  pastOrTodayDate,
  plantCount,
  positiveSeedCount,
  positiveWeightG,
  shortText,
  thousandSeedWeightG,
} from './field-schemas';
import { placementFields } from './movement';

/** regrowings; a hundred yearly ones is a lifetime of care */
const GENERATION = { min: 0, max: 100 } as const;

const lotFields = (today: string) => ({
  harvestedOn: pastOrTodayDate(today),
  generation: optionalField(countBetween(GENERATION, 'regrowings')),
  isolation: choice(ISOLATION_KEYS, 'isolation'),
  plantsHarvested: optionalField(plantCount),
  cleanWeightG: optionalField(positiveWeightG),
  thousandSeedWeightG: optionalField(thousandSeedWeightG),
  treatment: optionalField(shortText),
  notes: optionalField(longText),
});

/** @param today  'YYYY-MM-DD' at the bank */
export const logCleanedLotSchema = (today: string) =>
  z
    .object({
      /** number or exact name, as somebody types it from a label */
      accession: shortText,
      /** left empty: the next number of the harvest year */
      lotNumber: optionalField(lotNumber),
      ...lotFields(today),
      seedCount: optionalField(positiveSeedCount),
      ...placementFields,
      /** left empty: today */
      storedOn: optionalField(pastOrTodayDate(today)),
    })
    .refine((lot) => lot.storedOn === undefined || lot.storedOn >= lot.harvestedOn, {
      path: ['storedOn'],
      message: 'Seed cannot be stored before it is harvested: check both dates.',
    });

/** @param today  'YYYY-MM-DD' at the bank */
export const updateLotSchema = (today: string) =>
  z.object({ id: idOf('lot'), version: versionField, ...lotFields(today) });
