import { z } from 'zod';
import { blankToUndefined } from '../field-schemas';
import { IMPORT_KINDS } from './fields';

/** Choosing a file. */
export const uploadImportSchema = z.object({
  kind: z.enum(IMPORT_KINDS, { error: 'Choose what the file holds.' }),
  fileName: z.preprocess(
    blankToUndefined,
    z.string({ error: 'Choose a file.' }).max(200, 'Give the file a shorter name.'),
  ),
  bytes: z
    .instanceof(Uint8Array, { error: 'Choose a file.' })
    .refine((bytes) => bytes.length > 0, 'This file is empty.'),
});

/** A column's index as a form sends it; blank for 'not in this file'. */
const columnIndex = z.preprocess(
  (value) => (value === '' || value === undefined ? null : value),
  z.coerce.number().int().min(0).max(10_000).nullable(),
);

export const columnMappingSchema = z.record(z.string().max(60), columnIndex);

/** Importing a checked file. */
export const runImportSchema = z.object({
  importId: z.string({ error: 'Choose the file again.' }).max(60),
  columns: columnMappingSchema.default({}),
  createNames: z.literal('on').optional(),
});
