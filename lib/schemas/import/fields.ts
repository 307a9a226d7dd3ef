/** The three kinds of table that can be read in, and the fields of each. */
import type { ColumnField } from '../../domain/spreadsheet/guess-columns';
import { ACCESSION_FIELDS } from './accession-fields';
import { GERMINATION_TEST_FIELDS } from './germination-test-fields';
import { LOT_FIELDS } from './lot-fields';

export const IMPORT_KINDS = ['accessions', 'lots', 'germination tests'] as const;
export type ImportKind = (typeof IMPORT_KINDS)[number];

export const IMPORT_FIELDS = {
  accessions: ACCESSION_FIELDS,
  lots: LOT_FIELDS,
  'germination tests': GERMINATION_TEST_FIELDS,
} as const satisfies Record<ImportKind, readonly ColumnField[]>;

/** The key of a field in a kind of table. */
export type ImportFieldKey<Kind extends ImportKind> = (typeof IMPORT_FIELDS)[Kind][number]['key'];
