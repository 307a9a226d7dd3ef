/** What a dry run knows of the collection, as plain data, and what it reports. */
import type { DateOrder, DatePrecision } from '../../domain/spreadsheet/date-format';
import type { DecimalMark } from '../../domain/spreadsheet/number-format';
import { plainWords } from '../../domain/spreadsheet/plain-words';
import type { ImportKind } from './fields';
import type { ReadCells } from './records';

export interface ImportContext {
  /** 'YYYY-MM-DD' at the bank */
  today: string;
  accessionNumbers: readonly string[];
  lotNumbers: readonly string[];
  /** synonyms are other names of the crop, such as its scientific name */
  crops: readonly { name: string; synonyms: readonly string[] }[];
  stores: readonly string[];
  /** tests already kept, to find repeats */
  tests?: readonly { lotNumber: string; setOn: string }[];
  /** set when the steward has said so; used for columns that show nothing themselves or contradict themselves */
  decimalMark?: DecimalMark;
  dateOrder?: DateOrder;
}

export interface ImportProblem {
  /** line of the file, or null when it is about the whole file */
  line: number | null;
  /** heading of the column, or null when it is about the whole line */
  column: string | null;
  /** key of the field, or null */
  field: string | null;
  /** the cell as written */
  value: string;
  /** what is wrong and what to do */
  message: string;
}

/** A row of which each cell has been read; cells with a problem are missing from `cells`. */
export interface ReadRow<Kind extends ImportKind> {
  line: number;
  /** cells that could be read, by field key */
  cells: Partial<ReadCells<Kind>>;
  /** how much each date said, by field key */
  precision: Partial<Record<string, DatePrecision>>;
  /** replicates named in the seeds-sown cell ('4 x 50') */
  replicates: number | undefined;
  /** text of a field's cell as written, trimmed; '' when there is none */
  textOf: (key: string) => string;
  /** reports a problem with a field of this row */
  refuse: (key: string, message: string) => void;
  hasProblem: () => boolean;
}

/** A note that many rows may call for: said once, with the number of rows. */
export type CountNote = (note: string, line: number) => void;

/** What the checks of one kind of table need. */
export interface KindCheck<Kind extends ImportKind, RecordType> {
  /** the record of a row, or null when it has problems (reported through row.refuse) */
  checkRow: (row: ReadRow<Kind>) => RecordType | null;
  newCrops: () => string[];
  newStores: () => string[];
}

/**
 * The form in which accession and lot numbers are compared: capitals and repeated spaces make no difference.
 *
 * @param code  a number as written
 * @returns the form to compare
 * Checked in tests/schemas/import/dry-run.test.ts
 */
export function codeKey(code: string): string {
  return code.normalize('NFC').trim().replace(/\s+/g, ' ').toLowerCase();
}

/**
 * Finds names among those known, and collects those that are not.
 *
 * @param known  names, each with the spellings under which it may be found
 * @returns `find` gives the name as known, or as first seen in the file and then `isNew`; `added` lists new names, first spelling
 * Checked in tests/schemas/import/dry-run.test.ts
 */
export function createNameFinder(known: readonly { name: string; synonyms: readonly string[] }[]) {
  const byWord = new Map<string, string>();
  for (const { name, synonyms } of known) for (const word of synonyms) byWord.set(plainWords(word), name);
  // Names after synonyms: a crop's own name wins over another crop's synonym.
  for (const { name } of known) byWord.set(plainWords(name), name);
  const added = new Map<string, string>();

  return {
    find(text: string): { name: string; isNew: boolean } {
      // A name in a script without letters that plainWords keeps still has to be told from others.
      const word = plainWords(text) || text.trim();
      const singular = [word, word.replace(/s$/, ''), word.replace(/es$/, '')];
      const knownForm = singular.find((form) => byWord.has(form));
      if (knownForm !== undefined) return { name: byWord.get(knownForm) ?? '', isNew: false };
      const addedForm = singular.find((form) => added.has(form));
      if (addedForm !== undefined) return { name: added.get(addedForm) ?? '', isNew: true };
      added.set(word, text.trim());
      return { name: text.trim(), isNew: true };
    },
    added: () => [...added.values()],
  };
}
