import 'server-only';
import bwip from 'bwip-js/node';
import type { CodeMatrix } from '@/lib/domain/labels/code-size';
import type { CodeKind } from '@/lib/domain/labels/label-format';

/** QR with a seventh of the squares to spare (level M): a label is creased and smudged. Data Matrix always has its own. */
const ENCODERS: Readonly<Record<CodeKind, (text: string) => { bcid: string; text: string }>> = {
  qr: (text) => ({ bcid: 'qrcode', text, eclevel: 'M' }),
  'data-matrix': (text) => ({ bcid: 'datamatrix', text }),
};

/** Choosing the best mask takes some milliseconds, and a packet's code never changes: preview and PDF share the work. */
const MOST_KEPT = 2000;
const kept = new Map<string, CodeMatrix>();

/**
 * Squares of a QR code (ISO/IEC 18004) or a Data Matrix (ISO/IEC 16022, ECC 200).
 *
 * Checked in tests/server/labels/labels-read-back.test.ts
 */
export function encodeCode(kind: CodeKind, text: string): CodeMatrix {
  const key = `${kind} ${text}`;
  const known = kept.get(key);
  if (known) return known;
  const [symbol] = bwip.raw(ENCODERS[kind](text));
  if (!symbol || !('pixs' in symbol)) throw new Error(`encodeCode: '${text}' gave no square code`);
  const { pixs, pixx, pixy } = symbol;
  const rows = Array.from({ length: pixy }, (_, y) => Array.from({ length: pixx }, (_, x) => pixs[y * pixx + x] === 1));
  const matrix: CodeMatrix = { kind, rows };
  if (kept.size >= MOST_KEPT) kept.delete(kept.keys().next().value ?? '');
  kept.set(key, matrix);
  return matrix;
}
