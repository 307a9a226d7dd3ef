/**
 * Checks a whole table before anything is written: every cell is read, every row becomes a record or has its problems
 * named by line and column, in words that say what to do.
 */
import type { ColumnField, ColumnMapping } from '../../domain/spreadsheet/guess-columns';
import type { Table, TableRow } from '../../domain/spreadsheet/read-table';
import { type CellReader, createCellReader } from './cell-reader';
import { createAccessionCheck } from './check-accessions';
import { createGerminationTestCheck } from './check-germination-tests';
import { createLotCheck } from './check-lots';
import { IMPORT_FIELDS, type ImportKind } from './fields';
import { findFileConventions } from './file-conventions';
import type { CountNote, ImportContext, ImportProblem, KindCheck, ReadRow } from './import-context';
import { type ImportRecords, importSchemas, type ReadCells } from './records';

export interface DryRun<RecordType> {
  records: RecordType[];
  problems: ImportProblem[];
  notes: string[];
  /** crops and stores that the file names and the collection lacks, to offer for creation */
  newCrops: string[];
  newStores: string[];
  counts: { rows: number; ready: number; rowsWithProblems: number; problems: number };
}

const LINES_NAMED_IN_A_NOTE = 3;

/** Collects notes that many lines call for, and says each once. */
function createNoteCounter() {
  const linesOf = new Map<string, { first: number[]; count: number }>();
  const note: CountNote = (text, line) => {
    const lines = linesOf.get(text) ?? { first: [], count: 0 };
    lines.count += 1;
    if (lines.first.length < LINES_NAMED_IN_A_NOTE) lines.first.push(line);
    linesOf.set(text, lines);
  };
  const said = () =>
    [...linesOf].map(([text, { first, count }]) => {
      const more = count > first.length ? ` and ${count - first.length} more` : '';
      return `${text} (${count === 1 ? 'line' : 'lines'} ${first.join(', ')}${more})`;
    });
  return { note, said };
}

function readRow<Kind extends ImportKind>(
  row: TableRow,
  readers: ReadonlyMap<string, CellReader>,
  problems: ImportProblem[],
): ReadRow<Kind> {
  const cells: Record<string, unknown> = {};
  const precision: ReadRow<Kind>['precision'] = {};
  let replicates: number | undefined;
  const problemsBefore = problems.length;
  const textOf = (key: string) => {
    const column = readers.get(key)?.column ?? null;
    return column === null ? '' : (row.cells[column] ?? '').trim();
  };
  const refuse = (key: string, message: string) => {
    const reader = readers.get(key);
    problems.push({ line: row.line, column: reader?.heading ?? null, field: key, value: textOf(key), message });
  };
  for (const [key, reader] of readers) {
    const reading = reader.read(reader.column === null ? '' : (row.cells[reader.column] ?? ''));
    if (!reading.ok) {
      refuse(key, reading.message);
      continue;
    }
    if (reading.value !== undefined) cells[key] = reading.value;
    if (reading.precision) precision[key] = reading.precision;
    if (reading.replicates) replicates = reading.replicates;
  }
  const hasProblem = () => problems.length > problemsBefore;
  return {
    line: row.line,
    cells: cells as Partial<ReadCells<Kind>>,
    precision,
    replicates,
    textOf,
    refuse,
    hasProblem,
  };
}

function createReaders(
  kind: ImportKind,
  table: Table,
  mapping: ColumnMapping,
  context: ImportContext,
): Map<string, CellReader> {
  const schemas: Record<string, Parameters<typeof createCellReader>[1]> = importSchemas(context.today)[kind].shape;
  const fields: readonly ColumnField[] = IMPORT_FIELDS[kind];
  const columns = fields.map((field) => {
    const column = mapping[field.key] ?? null;
    const heading = column === null ? field.label : table.header[column]?.trim() || field.label;
    const needsValues = column !== null && field.kind !== 'text' && field.kind !== 'code' && field.kind !== 'choice';
    const values = needsValues ? table.rows.map((row) => row.cells[column] ?? '') : [];
    return { field, column, heading, values };
  });
  const file = {
    today: context.today,
    ...findFileConventions(columns),
    chosenDecimalMark: context.decimalMark ?? null,
    chosenDateOrder: context.dateOrder ?? null,
  };
  return new Map(
    columns.map(({ field, column, heading, values }) => {
      const schema = schemas[field.key];
      if (!schema) throw new RangeError(`checkRows: no schema for field ${field.key} of ${kind}`);
      return [field.key, createCellReader(field, schema, { column, heading, values }, file)] as const;
    }),
  );
}

function problemsOfTheWhole(kind: ImportKind, table: Table, mapping: ColumnMapping): ImportProblem[] {
  const whole = (field: string | null, message: string): ImportProblem => ({
    line: null,
    column: null,
    field,
    value: '',
    message,
  });
  const fields: readonly ColumnField[] = IMPORT_FIELDS[kind];
  const missing = fields
    .filter((field) => field.required && (mapping[field.key] ?? null) === null)
    .map((field) => whole(field.key, `Choose the column that holds: ${field.label}.`));
  const columns = Object.values(mapping).filter((column) => column !== null);
  const twice = columns.find((column, index) => columns.indexOf(column) !== index);
  if (twice !== undefined)
    missing.push(whole(null, `Column '${table.header[twice] ?? twice}' is chosen for two fields: choose it once.`));
  const outside = columns.find((column) => !(column in table.header));
  if (outside !== undefined)
    missing.push(whole(null, `The file has no column ${outside + 1}: choose the columns again.`));
  if (
    kind === 'germination tests' &&
    (mapping.germinated ?? null) === null &&
    (mapping.germinationPercent ?? null) === null
  ) {
    missing.push(
      whole('germinated', 'Choose the column that holds the seeds germinated or the germination percentage.'),
    );
  }
  return missing;
}

// The key decides the type; TypeScript cannot follow that through a union, so it is said once, here.
function createCheck<Kind extends ImportKind>(
  kind: Kind,
  context: ImportContext,
  note: CountNote,
): KindCheck<Kind, ImportRecords[Kind]> {
  const makers = {
    accessions: createAccessionCheck,
    lots: createLotCheck,
    'germination tests': createGerminationTestCheck,
  };
  return makers[kind](context, note) as unknown as KindCheck<Kind, ImportRecords[Kind]>;
}

/**
 * Checks every row of a table against the rules and the collection. Writes nothing.
 *
 * @param kind     what the table holds
 * @param table    from readTable
 * @param mapping  for each field key the index of its column or null, from guessColumns and the steward's corrections
 * @param context  the collection as plain data; the steward's word on decimal mark and date order
 * @returns the records that can be imported as they are, each problem with line and column, notes on what was assumed,
 *   names to offer for creation, and counts. A required field without a column is one problem of the whole file.
 * @throws RangeError when context.today is not a calendar date
 * Checked in tests/schemas/import/dry-run.test.ts
 */
export function checkRows<Kind extends ImportKind>(
  kind: Kind,
  table: Table,
  mapping: ColumnMapping,
  context: ImportContext,
): DryRun<ImportRecords[Kind]> {
  const readers = createReaders(kind, table, mapping, context);
  const { note, said } = createNoteCounter();
  const check = createCheck(kind, context, note);
  const records: ImportRecords[Kind][] = [];
  const problems = problemsOfTheWhole(kind, table, mapping);
  const rows = table.rows.length + table.ragged.filter((row) => !row.kept).length;

  if (problems.length === 0) {
    for (const { line, found, expected, kept } of table.ragged) {
      if (kept) note('Rows with fewer cells than the heading row were filled up with blanks at their end.', line);
      else {
        const message = `This line has ${found} cells under ${expected} headings: put quotation marks around a cell that holds the separator, or take the extra cells out.`;
        problems.push({ line, column: null, field: null, value: '', message });
      }
    }
    for (const tableRow of table.rows) {
      const record = check.checkRow(readRow<Kind>(tableRow, readers, problems));
      if (record) records.push(record);
    }
  }

  problems.sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
  const columnNotes = [...readers.values()].flatMap((reader) =>
    reader.notes.map((text) => `${reader.heading}: ${text}`),
  );
  return {
    records,
    problems,
    notes: [...table.notes, ...columnNotes, ...said()],
    newCrops: check.newCrops(),
    newStores: check.newStores(),
    counts: { rows, ready: records.length, rowsWithProblems: rows - records.length, problems: problems.length },
  };
}
