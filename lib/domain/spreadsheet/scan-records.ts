/**
 * Walks once through delimited text and finds where its records begin, how many cells each has, and quotes that do
 * not close. The parser proper is csv-parse; this scan gives what it does not: the line on which each record begins,
 * and the line on which a quote was opened that swallowed the rest of the file.
 */

export type Delimiter = ',' | ';' | '\t';

export interface ScannedRecords {
  /** line on which each record begins, from 1 */
  lines: number[];
  /** cells in each record */
  widths: number[];
  /** whether each record has nothing but spaces and delimiters */
  blank: boolean[];
  /** the first quote that is never closed or is followed by text, with the line on which it was opened */
  quoteProblem: { kind: 'not-closed' | 'text-behind'; line: number } | null;
}

const QUOTE = 34;
const LF = 10;
const CR = 13;

/**
 * Scans delimited text (RFC 4180 quoting; line ends LF, CR LF or CR).
 *
 * @param text       the text
 * @param delimiter  the one that separates cells
 * @param maxRecords stop after this many records
 * @returns the records found; after a quote problem, what came before it
 * Checked in tests/domain/spreadsheet/read-table.test.ts
 */
export function scanRecords(text: string, delimiter: Delimiter, maxRecords = Number.POSITIVE_INFINITY): ScannedRecords {
  const separator = delimiter.charCodeAt(0);
  const found: ScannedRecords = { lines: [], widths: [], blank: [], quoteProblem: null };
  const end = text.length;
  let position = 0;
  let line = 1;
  let recordLine = 1;
  let width = 1;
  let blank = true;
  let atCellStart = true;

  const closeRecord = () => {
    found.lines.push(recordLine);
    found.widths.push(width);
    found.blank.push(blank);
    recordLine = line;
    width = 1;
    blank = true;
    atCellStart = true;
  };

  while (position < end) {
    const code = text.charCodeAt(position);
    if (code === QUOTE && atCellStart) {
      const openedOn = line;
      position += 1;
      let closed = false;
      while (position < end && !closed) {
        const inside = text.charCodeAt(position);
        if (inside === QUOTE && text.charCodeAt(position + 1) === QUOTE) {
          blank = false;
          position += 2;
        } else if (inside === QUOTE) {
          closed = true;
          position += 1;
        } else {
          if (inside === LF || (inside === CR && text.charCodeAt(position + 1) !== LF)) line += 1;
          else if (inside > 32 && inside !== 160) blank = false;
          position += 1;
        }
      }
      const next = position < end ? text.charCodeAt(position) : LF;
      if (!closed || (next !== separator && next !== LF && next !== CR)) {
        found.quoteProblem = { kind: closed ? 'text-behind' : 'not-closed', line: openedOn };
        return found;
      }
      atCellStart = false;
      // The record must count even when the file ends with this quote.
      if (position >= end) closeRecord();
    } else if (code === LF || code === CR) {
      position += code === CR && text.charCodeAt(position + 1) === LF ? 2 : 1;
      line += 1;
      closeRecord();
      if (found.lines.length >= maxRecords) return found;
    } else {
      if (code === separator) {
        width += 1;
        atCellStart = true;
      } else {
        if (code > 32 && code !== 160) blank = false;
        atCellStart = false;
      }
      position += 1;
      if (position >= end) closeRecord();
    }
  }
  return found;
}
