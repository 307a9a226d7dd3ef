/** Recognises files that are not tables of text by their first bytes, to tell the steward what to do instead. */

const SAVE_AS =
  'Open it in your spreadsheet program and save it as CSV (File > Save as > CSV UTF-8), then choose that file.';
const LOOKED_AT_BYTES = 8_192;

const SIGNATURES: { bytes: number[]; message: string }[] = [
  {
    bytes: [0x50, 0x4b, 0x03, 0x04],
    message: `This is a spreadsheet workbook (.xlsx or .ods), not a CSV file. ${SAVE_AS}`,
  },
  { bytes: [0x50, 0x4b, 0x05, 0x06], message: `This is an empty zip file, not a CSV file. ${SAVE_AS}` },
  {
    bytes: [0xd0, 0xcf, 0x11, 0xe0],
    message: `This is an old spreadsheet workbook (.xls), not a CSV file. ${SAVE_AS}`,
  },
  {
    bytes: [0x25, 0x50, 0x44, 0x46],
    message: 'This is a PDF, not a CSV file. Export the table it was made from as CSV.',
  },
  { bytes: [0x1f, 0x8b], message: 'This file is compressed (.gz). Unpack it first, then choose the CSV file inside.' },
];

const startsWith = (bytes: Uint8Array, signature: number[]) => signature.every((byte, index) => bytes[index] === byte);

/**
 * Says why a file cannot be a table of text, if so.
 *
 * @param bytes  the whole file or at least its beginning
 * @returns a sentence naming what the file is and what to do, or null when it may be text
 * Checked in tests/domain/spreadsheet/read-table.test.ts
 */
export function whyNotText(bytes: Uint8Array): string | null {
  const known = SIGNATURES.find((signature) => startsWith(bytes, signature.bytes));
  if (known) return known.message;
  const hasUtf16Mark = startsWith(bytes, [0xff, 0xfe]) || startsWith(bytes, [0xfe, 0xff]);
  const beginning = bytes.subarray(0, LOOKED_AT_BYTES);
  // Text has no zero bytes except in UTF-16, and that needs its mark to be told from other files.
  if (!hasUtf16Mark && beginning.includes(0)) return `This is not a text file. ${SAVE_AS}`;
  const opening = new TextDecoder('latin1').decode(beginning.subarray(0, 512)).trimStart().toLowerCase();
  if (/^(?:ï»¿)?<(?:!doctype html|html|table|\?xml)/.test(opening)) {
    return `This is a web page or XML file, not a CSV file. ${SAVE_AS}`;
  }
  return null;
}
