/** Input of the commands about accessions. */
import { z } from 'zod';
import { idOf, versionField } from './choice-field';
import { accessionNumber, longText, optionalField, pastOrTodayDate, shortText } from './field-schemas';

const accessionFields = (today: string) => ({
  name: shortText,
  cropId: idOf('crop'),
  donor: optionalField(shortText),
  acquiredOn: optionalField(pastOrTodayDate(today)),
  origin: optionalField(shortText),
  notes: optionalField(longText),
});

/** @param today  'YYYY-MM-DD' at the bank */
export const createAccessionSchema = (today: string) =>
  z.object({
    /** left empty: the next number of the series */
    number: optionalField(accessionNumber),
    ...accessionFields(today),
  });

/** @param today  'YYYY-MM-DD' at the bank */
export const updateAccessionSchema = (today: string) =>
  z.object({ id: idOf('accession'), version: versionField, ...accessionFields(today) });
