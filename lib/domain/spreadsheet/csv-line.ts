/**
 * One line of a CSV file that spreadsheets open (RFC 4180): commas between, quotes round what needs them, CRLF behind.
 *
 * A spreadsheet runs text that begins like a formula. Somebody could write such text into a note, so it gets an
 * apostrophe in front, which shows it as text (common practice). Numbers stay numbers, negative ones too.
 */

export type CsvCell = string | number | null;

/** What spreadsheets take for the beginning of a formula, also behind blanks; tab and line end open one in some. */
const LIKE_A_FORMULA = /^\s*[=+\-@]|^[\t\r\n]/;

const NEEDS_QUOTES = /[",\r\n]/;

/**
 * @param cells  text, finite numbers, or null for an empty cell
 * @returns the line with its end
 * @throws RangeError when a number is not finite
 * @see RFC 4180, 2
 * Checked in tests/domain/spreadsheet/csv-line.test.ts, by reading back with csv-parse
 */
export function csvLine(cells: readonly CsvCell[]): string {
  return `${cells.map(csvCell).join(',')}\r\n`;
}

function csvCell(cell: CsvCell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') {
    if (!Number.isFinite(cell)) throw new RangeError(`csvLine: a number must be finite, got ${cell}`);
    return String(cell);
  }
  const text = LIKE_A_FORMULA.test(cell) ? `'${cell}` : cell;
  return NEEDS_QUOTES.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
