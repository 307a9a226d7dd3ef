import type { Delimiter } from '../../../lib/domain/spreadsheet/scan-records';

/** Writes a table by RFC 4180; `quoteAlso` are further characters that put a cell into quotes. */
export function writeTable(
  rows: readonly (readonly string[])[],
  delimiter: Delimiter,
  { quoteAlso = '', lineEnd = '\r\n' }: { quoteAlso?: string; lineEnd?: string } = {},
): string {
  const special = [...`"\r\n${delimiter}${quoteAlso}`];
  const cell = (text: string) =>
    special.some((mark) => text.includes(mark)) ? `"${text.replaceAll('"', '""')}"` : text;
  return rows.map((row) => row.map(cell).join(delimiter) + lineEnd).join('');
}

/** Encodes text as UTF-8, optionally with its mark. */
export function utf8(text: string, { mark = false } = {}): Uint8Array {
  return new TextEncoder().encode((mark ? '\ufeff' : '') + text);
}

/** Encodes text as UTF-16 with its mark. */
export function utf16(text: string, order: 'little' | 'big'): Uint8Array {
  const marked = `\ufeff${text}`;
  const bytes = new Uint8Array(marked.length * 2);
  const view = new DataView(bytes.buffer);
  for (let index = 0; index < marked.length; index += 1) {
    view.setUint16(index * 2, marked.charCodeAt(index), order === 'little');
  }
  return bytes;
}
