/** What a row becomes when every cell of it could be read: the records that the database half takes. */
import { z } from 'zod';
import { ISOLATION_KEYS } from '../../domain/pollination/isolation';
import type { DatePrecision } from '../../domain/spreadsheet/date-format';
import { CONTAINER_KEYS } from '../../domain/stock/containers';
import { SHARING_TERMS_KEYS } from '../../domain/stock/sharing-terms';
import {
  accessionNumber,
  longText,
  lotNumber,
  moisturePercent,
  optionalField,
  pastOrTodayDate,
  percent,
  plantCount,
  positiveSeedCount,
  positiveWeightG,
  replicateCount,
  seedCount,
  shortText,
  thousandSeedWeightG,
} from '../field-schemas';
import type { ImportKind } from './fields';

// Old tables keep lots that are used up, with 0 g or 0 seeds: they come in without stock.
const noneWhenZero = <Schema extends z.ZodType>(schema: Schema) =>
  z.preprocess((value) => (value === 0 ? undefined : value), optionalField(schema)).optional();

/**
 * Schemas of the cells of each kind of table, by field key.
 *
 * @param today  'YYYY-MM-DD': what has happened cannot lie after it
 * @returns for each kind a zod object whose shape has one schema per field of IMPORT_FIELDS
 * @throws RangeError when today is not a calendar date
 * Checked in tests/schemas/import/fields.test.ts and dry-run.test.ts
 */
export function importSchemas(today: string) {
  const happened = pastOrTodayDate(today);
  return {
    accessions: z.object({
      number: accessionNumber,
      name: shortText,
      crop: shortText,
      donor: optionalField(shortText),
      acquiredOn: optionalField(happened),
      origin: optionalField(longText),
      sharing: z.object({ sharing: z.enum(SHARING_TERMS_KEYS), terms: optionalField(longText) }).optional(),
      notes: optionalField(longText),
    }),
    lots: z.object({
      number: optionalField(lotNumber),
      accessionNumber,
      harvestedOn: happened,
      isolation: z.enum(ISOLATION_KEYS).default('unknown'),
      plantsHarvested: optionalField(plantCount),
      cleanWeightG: noneWhenZero(positiveWeightG),
      thousandSeedWeightG: optionalField(thousandSeedWeightG),
      seedCount: noneWhenZero(positiveSeedCount),
      moisturePercent: optionalField(moisturePercent),
      container: z.enum(CONTAINER_KEYS).optional(),
      store: optionalField(shortText),
      packedOn: optionalField(happened),
      treatment: optionalField(shortText),
      notes: optionalField(longText),
    }),
    'germination tests': z.object({
      lotNumber,
      setOn: happened,
      closedOn: optionalField(happened),
      seedsSown: positiveSeedCount,
      replicates: optionalField(replicateCount),
      germinated: optionalField(seedCount),
      germinationPercent: optionalField(percent),
      abnormal: optionalField(seedCount),
      hard: optionalField(seedCount),
      fresh: optionalField(seedCount),
      dead: optionalField(seedCount),
      method: optionalField(longText),
      notes: optionalField(longText),
    }),
  } satisfies Record<ImportKind, z.ZodObject>;
}

type Cells<Kind extends ImportKind> = z.infer<ReturnType<typeof importSchemas>[Kind]>;

export interface AccessionRecord extends Cells<'accessions'> {
  line: number;
  /** how much of acquiredOn the file said; null when there is no date */
  acquiredPrecision: DatePrecision | null;
}

/** `number` is undefined when the file has none: one is made on import. */
export interface LotRecord extends Cells<'lots'> {
  line: number;
  harvestedPrecision: DatePrecision;
  packedPrecision: DatePrecision | null;
}

/** Counts of one replicate; the classes add to `seeds`. */
export interface ReplicateRecord {
  seeds: number;
  normal: number;
  abnormal: number;
  hard: number;
  fresh: number;
  dead: number;
}

export interface GerminationTestRecord {
  line: number;
  lotNumber: string;
  setOn: string;
  setPrecision: DatePrecision;
  /** the set-on date where the file gives no other */
  closedOn: string;
  /** one replicate with all seeds: old tables keep totals only */
  replicates: [ReplicateRecord];
  /** replicates that the file says were set, though their counts are lost */
  replicatesSet: number | undefined;
  method: string | undefined;
  notes: string | undefined;
}

export interface ImportRecords {
  accessions: AccessionRecord;
  lots: LotRecord;
  'germination tests': GerminationTestRecord;
}

/** The cells of a row after each has passed its schema. */
export type ReadCells<Kind extends ImportKind> = Cells<Kind>;
