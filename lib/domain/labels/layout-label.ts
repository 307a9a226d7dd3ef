import { type CodeMatrix, DOT_MM, leastCodeSideMm, QUIET_SQUARES, squareSizesMm, squaresAcross } from './code-size';
import type { Insets } from './label-cells';
import type { LabelDrawing, PlacedCode, Rectangle } from './label-drawing';
import { LABEL_PARTS, type LabelText } from './label-text';
import { fitTextBlock } from './text-block';

export type LabelLayout =
  | { ok: true; drawing: LabelDrawing }
  | { ok: false; reason: 'code-too-small'; neededMm: number; roomMm: number }
  | { ok: false; reason: 'text-too-long' };

export interface LabelToPrint {
  text: LabelText;
  code: CodeMatrix;
}

/** The code takes at most this share of the label's longer side, so that words keep the rest. */
const CODE_SHARE = 0.5;

/**
 * Lays out one label: the code at the right (below on a tall label), the words in the rest. The largest code and
 * letters are taken with which most parts find room; nothing stands in the code's quiet zone.
 *
 * @param label   what stands on it
 * @param size    the label, mm
 * @param insets  how far everything keeps from its edges, mm
 * @returns the drawing; or why there is none: the code would be too small to be read, or the name, numbers and caution
 *   do not fit beside it
 * Checked in tests/domain/labels/layout-label.test.ts
 */
export function layoutLabel(
  { text: { lines, missing }, code }: LabelToPrint,
  size: { widthMm: number; heightMm: number },
  insets: Insets,
): LabelLayout {
  const inner = {
    xMm: insets.left,
    yMm: insets.top,
    widthMm: size.widthMm - insets.left - insets.right,
    heightMm: size.heightMm - insets.top - insets.bottom,
  };
  const isWide = inner.widthMm >= inner.heightMm;
  const roomMm = isWide
    ? Math.min(inner.heightMm, inner.widthMm * CODE_SHARE)
    : Math.min(inner.widthMm, inner.heightMm * CODE_SHARE);
  let best: LabelDrawing | null = null;
  for (const squareMm of squareSizesMm(code, roomMm)) {
    const sideMm = squareMm * squaresAcross(code);
    const block = fitTextBlock(lines, wordsBeside(inner, sideMm, isWide));
    if (!block) continue;
    const drawing = { ...block, code: placeCode(code, squareMm, inner, isWide), missing };
    if (best === null || losses(drawing) < losses(best)) best = drawing;
    if (losses(drawing) === 0) break;
  }
  if (best) return { ok: true, drawing: best };
  if (squareSizesMm(code, roomMm).length > 0) return { ok: false, reason: 'text-too-long' };
  return { ok: false, reason: 'code-too-small', neededMm: leastCodeSideMm(code), roomMm: Math.max(0, roomMm) };
}

/** A part that is missing is worse than one that is cut; of as many, those that are needed less are missed less. */
function losses({ leftOut, cut }: LabelDrawing): number {
  const mostNeeded = Math.min(...leftOut.map((part) => LABEL_PARTS.indexOf(part)), LABEL_PARTS.length);
  return 2 * leftOut.length + cut.length + (1 - mostNeeded / LABEL_PARTS.length);
}

/** Placing the code on whole dots may bring it nearer to the words by less than one. */
function wordsBeside(inner: Rectangle, sideMm: number, isWide: boolean): Rectangle {
  const takenMm = sideMm + DOT_MM;
  return isWide ? { ...inner, widthMm: inner.widthMm - takenMm } : { ...inner, heightMm: inner.heightMm - takenMm };
}

/** At the right, half way down; below on a tall label. On whole dots, so that a thermal printer blurs no edge. */
function placeCode(matrix: CodeMatrix, squareMm: number, inner: Rectangle, isWide: boolean): PlacedCode {
  const quietMm = QUIET_SQUARES[matrix.kind] * squareMm;
  const sideMm = squareMm * squaresAcross(matrix);
  const left = isWide ? inner.xMm + inner.widthMm - sideMm : inner.xMm + (inner.widthMm - sideMm) / 2;
  const top = isWide ? inner.yMm + (inner.heightMm - sideMm) / 2 : inner.yMm + inner.heightMm - sideMm;
  return { xMm: onDots(left + quietMm), yMm: onDots(top + quietMm), squareMm, matrix };
}

const onDots = (mm: number) => Math.floor(mm / DOT_MM + 1e-9) * DOT_MM;
