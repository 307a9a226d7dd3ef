/** Bytes to text in the encodings that spreadsheet programs save: UTF-8, UTF-16 with its mark, Windows-1252. */

export type TextEncodingName = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

export type DecodedText =
  | { ok: true; text: string; encoding: TextEncodingName; note: string | null }
  | { ok: false; reason: string };

// Windows-1252 for 0x80-0x9F (WHATWG Encoding Standard, index windows-1252). Written out because some Node versions
// decode these bytes as control characters, which would lose every curly quote and the euro sign.
const CP1252_80_TO_9F =
  '\u20ac\u0081\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\u008d\u017d\u008f' +
  '\u0090\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\u009d\u017e\u0178';

const withCp1252 = (text: string) =>
  text.replace(/[\u0080-\u009f]/g, (control) => CP1252_80_TO_9F.charAt(control.charCodeAt(0) - 0x80));

function decodeStrictly(bytes: Uint8Array, encoding: string): string | null {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/**
 * Decodes a text file.
 *
 * @param bytes  the whole file
 * @returns the text without its byte order mark, the encoding used, and a note when it had to be guessed;
 *   or a reason when a file marked as UTF-16 is damaged
 * Checked in tests/domain/spreadsheet/read-table.test.ts
 */
export function decodeText(bytes: Uint8Array): DecodedText {
  const mark = ((bytes[0] ?? 0) << 8) | (bytes[1] ?? 0);
  if (mark === 0xfffe || mark === 0xfeff) {
    const encoding = mark === 0xfffe ? 'utf-16le' : 'utf-16be';
    const text = decodeStrictly(bytes, encoding);
    if (text === null)
      return { ok: false, reason: 'The file says that it is UTF-16 text but is damaged. Save it again as CSV UTF-8.' };
    return { ok: true, text, encoding, note: null };
  }
  const utf8 = decodeStrictly(bytes, 'utf-8');
  if (utf8 !== null) return { ok: true, text: utf8, encoding: 'utf-8', note: null };

  const text = withCp1252(new TextDecoder('windows-1252').decode(bytes));
  const note =
    'The file is not UTF-8 and was read as Windows-1252: check letters with accents. Saving it as CSV UTF-8 avoids this.';
  return { ok: true, text, encoding: 'windows-1252', note };
}

/**
 * A long text file piece by piece, so that it is never whole in memory a second time.
 *
 * @param bytes       the whole file
 * @param pieceBytes  bytes decoded at once
 * @returns the pieces in order, without a byte order mark, in the encoding that decodeText would choose; a damaged
 *   UTF-16 file gives marks of replacement instead of a refusal
 * Checked in tests/domain/spreadsheet/text-pieces.test.ts
 */
export function* textPieces(bytes: Uint8Array, pieceBytes: number): Generator<string> {
  const encoding = encodingOf(bytes, pieceBytes);
  const decoder = new TextDecoder(encoding);
  for (let at = 0; at < bytes.length; at += pieceBytes) {
    const piece = decoder.decode(bytes.subarray(at, at + pieceBytes), { stream: at + pieceBytes < bytes.length });
    yield encoding === 'windows-1252' ? withCp1252(piece) : piece;
  }
}

function encodingOf(bytes: Uint8Array, pieceBytes: number): TextEncodingName {
  const mark = ((bytes[0] ?? 0) << 8) | (bytes[1] ?? 0);
  if (mark === 0xfffe) return 'utf-16le';
  if (mark === 0xfeff) return 'utf-16be';
  const strict = new TextDecoder('utf-8', { fatal: true });
  try {
    for (let at = 0; at < bytes.length; at += pieceBytes) {
      strict.decode(bytes.subarray(at, at + pieceBytes), { stream: at + pieceBytes < bytes.length });
    }
    return 'utf-8';
  } catch {
    return 'windows-1252';
  }
}
