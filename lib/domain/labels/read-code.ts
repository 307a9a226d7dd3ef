/** What a scanned or typed code names. */
export type CodeRead =
  | { kind: 'packet' | 'lot'; number: string }
  /** `dish` from 1; null: the whole tray */
  | { kind: 'tray'; number: string; dish: number | null };

/** Digits that a number has at least: people may leave out the noughts when they type. */
const PACKET_DIGITS = 5;
const TEST_DIGITS = 4;

// A hand scanner set to another keyboard types another sign for the hyphen: 'ß' on a German one, an apostrophe on an
// Italian or Spanish one. People type a blank, a dash or nothing.
const HYPHEN = String.raw`\s*[-‐‑–—ß'’_]?\s*`;
const SURE_HYPHEN = HYPHEN.replace('?', '');
const PACKET = new RegExp(`^P${HYPHEN}(\\d{1,12})$`, 'i');
const LOT = new RegExp(`^L${HYPHEN}(\\d{4})${SURE_HYPHEN}(\\d{1,12})$`, 'i');
const LOT_WITH_BLANK = /^L\s+(\d{4})\s+(\d{1,12})$/i;
const TRAY = new RegExp(`^T${HYPHEN}(\\d{1,12})(?:(?:${SURE_HYPHEN}|\\s*/\\s*)(\\d{1,3}))?$`, 'i');
const ADDRESS = /^[a-z][a-z0-9+.-]*:\/\/[^\s/?#]+(?:\/[^\s/?#]+)*?\/([plt])\/([^\s/?#]+)\/?$/i;

const KINDS: Readonly<Record<string, CodeRead['kind']>> = { p: 'packet', l: 'lot', t: 'tray' };

/**
 * Reads what a camera, a hand scanner or a person gives: a bare number in any case, or an address that ends in
 * '/p/<number>', '/l/<number>' or '/t/<number>'. The host does not matter and is never opened: labels stay good when the
 * bank's address changes.
 *
 * @param text  what was read: 'P-00012', 'p 12', 'l-2024-0007', 'T-0204-2', 'https://seedroom.example/p/P-00012'
 * @returns the kind and the number as it is kept ('P-00012'), or null when it is none of them
 * Checked in tests/domain/labels/read-code.test.ts
 */
export function readCode(text: string): CodeRead | null {
  // Some scanners put signs that cannot be seen before or after what they read.
  const trimmed = text.replace(/[\p{Cc}\p{Cf}]/gu, ' ').trim();
  const address = ADDRESS.exec(trimmed);
  if (!address) return readNumber(trimmed);
  const number = decoded(address[2] ?? '');
  if (number === null) return null;
  const kind = KINDS[address[1]?.toLowerCase() ?? ''];
  const bare = readNumber(number);
  if (bare?.kind === kind) return bare;
  // A bank may number its lots in its own way, like a test of ours too; packets always bear our numbers.
  return kind === 'lot' && (bare === null || bare.kind === 'tray') ? { kind, number } : null;
}

function readNumber(text: string): CodeRead | null {
  const packet = PACKET.exec(text);
  if (packet?.[1]) return { kind: 'packet', number: `P-${packet[1].padStart(PACKET_DIGITS, '0')}` };
  const lot = LOT.exec(text) ?? LOT_WITH_BLANK.exec(text);
  if (lot?.[1] && lot[2]) return { kind: 'lot', number: `L-${lot[1]}-${lot[2]}` };
  const tray = TRAY.exec(text);
  if (!tray?.[1]) return null;
  const dish = Number(tray[2] ?? 0);
  return { kind: 'tray', number: `T-${tray[1].padStart(TEST_DIGITS, '0')}`, dish: dish > 0 ? dish : null };
}

function decoded(text: string): string | null {
  try {
    return decodeURIComponent(text).trim() || null;
  } catch {
    return null;
  }
}
