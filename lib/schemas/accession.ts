/** Input of the commands about accessions. */
import { z } from 'zod';
import { SHARING_TERMS_KEYS } from '../domain/stock/sharing-terms';
import { idOf, versionField } from './choice-field';
import {
  accessionNumber,
  blankToUndefined,
  longText,
  optionalField,
  pastOrTodayDate,
  shortText,
} from './field-schemas';

const accessionFields = (today: string) => ({
  name: shortText,
  cropId: idOf('crop'),
  donor: optionalField(shortText),
  acquiredOn: optionalField(pastOrTodayDate(today)),
  origin: optionalField(shortText),
  notes: optionalField(longText),
  /** left out: may be shared when it is new, as it was when it is changed */
  sharing: z.preprocess(
    blankToUndefined,
    z.enum(SHARING_TERMS_KEYS, { error: 'Choose whether it may be shared.' }).optional(),
  ),
  /** what a recipient must agree to, or why it may not be shared */
  sharingTerms: optionalField(longText),
});

/** @param today  'YYYY-MM-DD' at the bank */
export const createAccessionSchema = (today: string) =>
  withItsTerms(
    z.object({
      /** left empty: the next number of the series */
      number: optionalField(accessionNumber),
      ...accessionFields(today),
    }),
  );

/** @param today  'YYYY-MM-DD' at the bank */
export const updateAccessionSchema = (today: string) =>
  withItsTerms(z.object({ id: idOf('accession'), version: versionField, ...accessionFields(today) }));

function withItsTerms<Schema extends z.ZodType<{ sharing?: string; sharingTerms?: string }>>(schema: Schema) {
  return schema.refine(({ sharing, sharingTerms }) => sharing !== 'with-terms' || sharingTerms !== undefined, {
    path: ['sharingTerms'],
    message: 'Write what a recipient must agree to, or choose that it may be shared without terms.',
  });
}
