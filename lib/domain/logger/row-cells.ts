/** Where the cells of a row stand, without making strings of them. */
import type { LoggerDelimiter } from './logger-layout';

const [QUOTE, SPACE] = [34, 32];

export interface RowCells {
  starts: Int32Array;
  ends: Int32Array;
}

export const rowCells = (most: number): RowCells => ({ starts: new Int32Array(most), ends: new Int32Array(most) });

/**
 * Finds the first cells of a row.
 *
 * @param text, from, to  the row: [from, to)
 * @param delimiter  what stands between cells; ' ' for any run of spaces or tabs
 * @param cells      filled with their bounds, without quotes round them
 * @returns how many were found, at most as many as `cells` has room for
 * Checked in tests/domain/logger/walk-lines.test.ts
 */
export function findCells(text: string, from: number, to: number, delimiter: LoggerDelimiter, cells: RowCells): number {
  return delimiter === ' '
    ? findWords(text, from, to, cells)
    : findDelimited(text, from, to, delimiter.charCodeAt(0), cells);
}

function findDelimited(text: string, from: number, to: number, separator: number, cells: RowCells): number {
  const { starts, ends } = cells;
  const most = starts.length;
  let count = 0;
  let at = from;
  while (count < most) {
    let start = at;
    let end: number;
    if (at < to && text.charCodeAt(at) === QUOTE) {
      start = at + 1;
      at = start;
      while (at < to && (text.charCodeAt(at) !== QUOTE || (text.charCodeAt(at + 1) === QUOTE && ++at < to))) at += 1;
      end = at;
      while (at < to && text.charCodeAt(at) !== separator) at += 1;
    } else {
      while (at < to && text.charCodeAt(at) !== separator) at += 1;
      end = at;
    }
    starts[count] = start;
    ends[count] = end;
    count += 1;
    if (at >= to) break;
    at += 1;
  }
  return count;
}

function findWords(text: string, from: number, to: number, { starts, ends }: RowCells): number {
  let count = 0;
  let at = from;
  while (count < starts.length) {
    while (at < to && text.charCodeAt(at) <= SPACE) at += 1;
    if (at >= to) break;
    starts[count] = at;
    while (at < to && text.charCodeAt(at) > SPACE) at += 1;
    ends[count] = at;
    count += 1;
  }
  return count;
}

/** All cells of a row as texts, for looking at a few rows. */
export function cellsOf(row: string, delimiter: LoggerDelimiter): string[] {
  const cells = rowCells(200);
  const count = findCells(row, 0, row.length, delimiter, cells);
  return Array.from({ length: count }, (_, index) => row.slice(cells.starts[index], cells.ends[index]).trim());
}
