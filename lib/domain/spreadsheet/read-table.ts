/**
 * A CSV file's bytes to a table of text: encoding, delimiter, heading row, rows with the line they begin on. Nothing
 * is interpreted here; what a cell means is decided by number-format, date-format and the import schemas.
 */
import { parse } from 'csv-parse/sync';
import { decodeText, type TextEncodingName } from './decode-text';
import { whyNotText } from './file-kind';
import { type Delimiter, type ScannedRecords, scanRecords } from './scan-records';
import { sniffDelimiter } from './sniff-delimiter';

export const MAX_FILE_BYTES = 25 * 1024 * 1024;
export const MAX_ROWS = 20_000;
export const MAX_COLUMNS = 200;

export interface TableRow {
  /** line of the file on which the row begins, from 1 */
  line: number;
  /** as many cells as the heading row has, untrimmed */
  cells: string[];
}

export interface RaggedRow {
  line: number;
  /** cells found and cells in the heading row */
  found: number;
  expected: number;
  /** true: short, kept with blanks at its end; false: too long, left out of the rows */
  kept: boolean;
}

export interface Table {
  ok: true;
  header: string[];
  rows: TableRow[];
  ragged: RaggedRow[];
  delimiter: Delimiter;
  encoding: TextEncodingName;
  notes: string[];
}

export type ReadTable = Table | { ok: false; reason: string };

const refuse = (reason: string): ReadTable => ({ ok: false, reason });
const isBlank = (cells: string[]) => cells.every((cell) => cell.trim() === '');

function explainQuote(problem: NonNullable<ScannedRecords['quoteProblem']>): string {
  return problem.kind === 'not-closed'
    ? `A quotation mark (") opened on line ${problem.line} is never closed. Close it or take it out, then choose the file again.`
    : `On line ${problem.line} a cell begins with a quotation mark (") that closes in the middle of the text. Put the whole cell in quotation marks, with each mark inside it doubled (""), or take them out.`;
}

// Some spreadsheet programs write "sep=;" as the first line to announce the delimiter.
function announcedDelimiter(text: string): { delimiter: Delimiter; length: number } | null {
  const found = /^"?sep=([,;\t])"?(\r\n|\n|\r)/i.exec(text);
  return found ? { delimiter: found[1] as Delimiter, length: found[0].length } : null;
}

function fitToWidth(cells: string[], line: number, width: number, ragged: RaggedRow[]): string[] | null {
  if (cells.length === width) return cells;
  const row = { line, found: cells.length, expected: width };
  if (cells.length < width) {
    ragged.push({ ...row, kept: true });
    return [...cells, ...new Array<string>(width - cells.length).fill('')];
  }
  // Blank cells beyond the last heading carry nothing.
  if (isBlank(cells.slice(width))) return cells.slice(0, width);
  ragged.push({ ...row, kept: false });
  return null;
}

/**
 * Reads a CSV file.
 *
 * @param bytes  the whole file
 * @param options.delimiter  when the steward has chosen it; otherwise it is found from the text
 * @returns the table, where blank rows are dropped, a lone title above the headings is passed over, short rows are
 *   filled with blanks and too long rows are left out (both listed in `ragged`); or a reason in plain words
 * Checked in tests/domain/spreadsheet/read-table.test.ts (layouts, limits, round trip of arbitrary tables)
 */
export function readTable(bytes: Uint8Array, options: { delimiter?: Delimiter } = {}): ReadTable {
  if (bytes.length > MAX_FILE_BYTES) {
    return refuse(`The file is larger than ${MAX_FILE_BYTES / 1024 / 1024} MB. Split it into smaller files.`);
  }
  const notText = whyNotText(bytes);
  if (notText) return refuse(notText);
  const decoded = decodeText(bytes);
  if (!decoded.ok) return decoded;

  if (!/[^\s,;"]/.test(decoded.text)) return refuse('The file is empty.');
  const announced = announcedDelimiter(decoded.text);
  const text = announced ? decoded.text.slice(announced.length) : decoded.text;
  const delimiter = options.delimiter ?? announced?.delimiter ?? sniffDelimiter(text);
  const scanned = scanRecords(text, delimiter);
  const lineShift = announced ? 1 : 0;
  if (scanned.quoteProblem) {
    return refuse(explainQuote({ ...scanned.quoteProblem, line: scanned.quoteProblem.line + lineShift }));
  }
  const filled = scanned.blank.filter((blank) => !blank).length;
  if (filled > MAX_ROWS + 2) {
    return refuse(
      `The file has about ${filled - 1} rows; ${MAX_ROWS} can be read at once. Split it into smaller files.`,
    );
  }
  const widest = scanned.widths.reduce((most, width) => Math.max(most, width), 0);
  if (widest > MAX_COLUMNS) {
    return refuse(`A row has ${widest} columns; ${MAX_COLUMNS} can be read. Delete columns that are not needed.`);
  }

  // One delimiter only: given several, the parser would split "4,1;35" at both. The scan has ruled out broken quotes,
  // so relaxed quoting can only mean a mark inside a cell (5" pot), which is kept as it stands.
  const records = parse(text, {
    delimiter,
    record_delimiter: ['\r\n', '\n', '\r'],
    relax_column_count: true,
    relax_quotes: true,
  });
  if (records.length !== scanned.lines.length) {
    return refuse('The rows of the file could not be told apart. Save it again as CSV UTF-8.');
  }

  const notes = decoded.note ? [decoded.note] : [];
  const rows = records
    .map((cells, index) => ({ line: (scanned.lines[index] ?? 0) + lineShift, cells }))
    .filter((row) => !isBlank(row.cells));
  const [first, second] = rows;
  const filledCells = (row: TableRow | undefined) => row?.cells.filter((cell) => cell.trim() !== '').length ?? 0;
  if (first && filledCells(first) === 1 && filledCells(second) >= 3) {
    notes.push(`Line ${first.line} was taken for a title and passed over; the headings are on line ${second?.line}.`);
    rows.shift();
  }
  const heading = rows.shift();
  if (!heading) return refuse('The file is empty.');
  if (rows.length === 0) return refuse('The file has a heading row but no rows below it.');
  if (rows.length > MAX_ROWS) {
    return refuse(`The file has ${rows.length} rows; ${MAX_ROWS} can be read at once. Split it into smaller files.`);
  }

  const header = heading.cells;
  const ragged: RaggedRow[] = [];
  const kept: TableRow[] = [];
  for (const row of rows) {
    const cells = fitToWidth(row.cells, row.line, header.length, ragged);
    if (cells) kept.push({ line: row.line, cells });
  }
  return { ok: true, header, rows: kept, ragged, delimiter, encoding: decoded.encoding, notes };
}
