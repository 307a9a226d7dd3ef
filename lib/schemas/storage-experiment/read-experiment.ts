/**
 * A storage experiment's table, pasted or from a file: all of its rows, or every problem named by line and column in
 * words that say what to do. Reads decimal commas, any usual delimiter and headings in several languages, as the import
 * of spreadsheets does.
 */
import type { z } from 'zod';
import type { StorageRow } from '../../domain/longevity/storage-experiment/storage-row';
import { guessColumns } from '../../domain/spreadsheet/guess-columns';
import { readTable, type Table } from '../../domain/spreadsheet/read-table';
import { moisturePercent, numberBetween, positiveSeedCount, seedCount, shortText } from '../field-schemas';
import { type CellReader, createCellReader } from '../import/cell-reader';
import { findFileConventions } from '../import/file-conventions';
import { EXPERIMENT_FIELDS } from './experiment-fields';

/** More rows than any bench has counted; the fit stays quick. */
export const MAX_EXPERIMENT_ROWS = 2_000;
const MAX_LOTS = 60;
/** A century of storage. */
const DAYS = { min: 0, max: 36_525 } as const;
const TEMPERATURE_C = { min: -196, max: 100 } as const;
/** The name of the only lot where no column names lots. */
export const ONLY_LOT = 'the lot';

const CELLS = {
  lot: shortText,
  moisturePercent,
  temperatureC: numberBetween(TEMPERATURE_C, '°C'),
  days: numberBetween(DAYS, 'days'),
  sown: positiveSeedCount,
  germinated: seedCount,
} satisfies Record<(typeof EXPERIMENT_FIELDS)[number]['key'], z.ZodType>;

type Key = keyof typeof CELLS;

export interface ExperimentProblem {
  /** line of the table, from 1; null where it is about the whole */
  line: number | null;
  /** the column's heading, or null */
  column: string | null;
  message: string;
}

export type ReadExperiment =
  | { ok: true; rows: StorageRow[]; notes: string[] }
  | { ok: false; problems: ExperimentProblem[]; notes: string[] };

/**
 * Reads a storage experiment.
 *
 * @param source  pasted text, or the bytes of a file
 * @returns every row and what was assumed in reading; or what stands in the way, each by line and column
 * Checked in tests/schemas/storage-experiment/read-experiment.test.ts
 */
export function readExperiment(source: string | Uint8Array): ReadExperiment {
  const table = readTable(typeof source === 'string' ? new TextEncoder().encode(source) : source);
  if (!table.ok) return { ok: false, problems: [{ line: null, column: null, message: table.reason }], notes: [] };
  const readers = readersOf(table);
  const notes = [...table.notes, ...[...readers.values()].flatMap((reader) => reader.notes)];
  const missing = missingColumns(table, readers);
  if (missing.length > 0) return { ok: false, problems: missing, notes };
  if (table.rows.length > MAX_EXPERIMENT_ROWS) {
    const message = `The table has ${table.rows.length} rows; ${MAX_EXPERIMENT_ROWS} can be taken. Add the dishes of one count together.`;
    return { ok: false, problems: [{ line: null, column: null, message }], notes };
  }
  if (readers.get('lot')?.column === null) notes.push('No column names the lot: all counts were taken as one lot.');

  const problems: ExperimentProblem[] = table.ragged
    .filter((row) => !row.kept)
    .map(({ line, found, expected }) => ({
      ...{ line, column: null },
      message: `This row has ${found} cells and the headings have ${expected}: take out the spare ones.`,
    }));
  const rows: StorageRow[] = [];
  for (const { line, cells } of table.rows) {
    const row = readRow(cells, readers, (key, message) =>
      problems.push({ line, column: readers.get(key)?.heading ?? null, message }),
    );
    if (row) rows.push(row);
  }
  const lots = new Set(rows.map((row) => row.lot)).size;
  if (lots > MAX_LOTS) {
    const message = `The table names ${lots} lots; ${MAX_LOTS} can be taken. Check that the right column holds the lot.`;
    problems.push({ line: null, column: readers.get('lot')?.heading ?? null, message });
  }
  problems.sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
  return problems.length > 0 ? { ok: false, problems, notes } : { ok: true, rows, notes };
}

function readersOf(table: Table): Map<Key, CellReader> {
  const { mapping } = guessColumns(
    table.header,
    table.rows.map((row) => row.cells),
    EXPERIMENT_FIELDS,
  );
  const columns = EXPERIMENT_FIELDS.map((field) => {
    const column = mapping[field.key] ?? null;
    const values = column === null ? [] : table.rows.map((row) => row.cells[column] ?? '');
    return { field, column, values, heading: column === null ? field.label : (table.header[column] ?? '').trim() };
  });
  const file = {
    ...findFileConventions(columns.filter(({ column }) => column !== null)),
    ...{ chosenDecimalMark: null, chosenDateOrder: null, today: '' },
  };
  return new Map(
    columns.map(({ field, ...column }) => [field.key, createCellReader(field, CELLS[field.key], column, file)]),
  );
}

/** Moisture and temperature may be left blank in a row before storage, but not be missing altogether. */
function missingColumns(table: Table, readers: ReadonlyMap<Key, CellReader>): ExperimentProblem[] {
  const seen = table.header.map((heading) => heading.trim()).filter(Boolean);
  return [...readers].flatMap(([key, { column, field }]) =>
    column !== null || key === 'lot'
      ? []
      : [
          {
            ...{ line: null, column: null },
            message: `No column for ${field.label.toLowerCase()} was found. The headings are: ${seen.join(', ')}. Name one of them “${field.label}”.`,
          },
        ],
  );
}

function readRow(
  cells: readonly string[],
  readers: ReadonlyMap<Key, CellReader>,
  refuse: (key: Key, message: string) => void,
): StorageRow | null {
  const found: Partial<Record<Key, unknown>> = {};
  const refused = new Set<Key>();
  const problem = (key: Key, message: string) => {
    // A cell that cannot be read is named once.
    if (!refused.has(key)) refuse(key, message);
    refused.add(key);
  };
  for (const [key, { column, read }] of readers) {
    const reading = read(column === null ? '' : (cells[column] ?? ''));
    if (reading.ok) found[key] = reading.value;
    else problem(key, reading.message);
  }
  const { lot, moisturePercent: moisture, temperatureC, days, sown, germinated } = found as Partial<StorageRow>;
  if (days !== undefined && days > 0) {
    if (moisture === undefined) problem('moisturePercent', 'Write the moisture: seed that was stored needs one.');
    if (temperatureC === undefined) problem('temperatureC', 'Write the temperature: seed that was stored needs one.');
  }
  if (sown !== undefined && germinated !== undefined && germinated > sown) {
    problem('germinated', `${germinated} germinated of ${sown} sown: check both.`);
  }
  if (readers.get('lot')?.column !== null && lot === undefined) problem('lot', 'Write which lot this is.');
  if (refused.size > 0) return null;
  return {
    lot: lot ?? ONLY_LOT,
    moisturePercent: moisture ?? null,
    temperatureC: temperatureC ?? null,
    days: days as number,
    sown: sown as number,
    germinated: germinated as number,
  };
}

/**
 * Rows as a table to paste into a form or a spreadsheet: tabs between cells, decimal points.
 *
 * Checked in tests/schemas/storage-experiment/read-experiment.test.ts: what is written is read again
 */
export function writeExperiment(rows: readonly StorageRow[]): string {
  const quoted = (text: string) => (/["\t\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
  const lines = rows.map(({ lot, moisturePercent: moisture, temperatureC, days, sown, germinated }) =>
    [quoted(lot), moisture ?? '', temperatureC ?? '', days, sown, germinated].join('\t'),
  );
  return [EXPERIMENT_FIELDS.map((field) => field.label).join('\t'), ...lines].join('\n');
}
