import type { LabelFormat } from './label-format';

/** Where a label lies on its page, and how far its content keeps from each of its edges; mm. */
export interface LabelCell {
  xMm: number;
  yMm: number;
  insets: Insets;
}

export interface Insets {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** Office printers leave a strip along the paper's edge blank. Status: common practice (3 to 4.3 mm). */
const BLANK_EDGE_MM = 4.5;
/** Cut and feed are out by a millimetre on sheets; a roll is held at its sides. Status: common practice. */
const SHEET_INSET_MM = 1.75;
const ROLL_INSET_MM = 1.25;

/**
 * The labels of one page, row by row from the upper left.
 *
 * @param format  a sound format (formatProblems finds nothing)
 * @returns a cell a label; content within its insets is neither cut by the paper's unprinted edge nor by a cut that is out
 * Checked in tests/domain/labels/label-formats.test.ts
 */
export function labelCells(format: LabelFormat): LabelCell[] {
  const cells: LabelCell[] = [];
  for (let row = 0; row < format.rows; row++) {
    for (let column = 0; column < format.columns; column++) {
      const xMm = format.marginLeftMm + column * format.pitchXMm;
      const yMm = format.marginTopMm + row * format.pitchYMm;
      cells.push({ xMm, yMm, insets: insetsOf(format, xMm, yMm) });
    }
  }
  return cells;
}

function insetsOf(format: LabelFormat, xMm: number, yMm: number): Insets {
  if (format.kind === 'roll') {
    return { left: ROLL_INSET_MM, top: ROLL_INSET_MM, right: ROLL_INSET_MM, bottom: ROLL_INSET_MM };
  }
  const inset = (toPaperEdgeMm: number) => Math.max(SHEET_INSET_MM, BLANK_EDGE_MM - toPaperEdgeMm);
  return {
    left: inset(xMm),
    top: inset(yMm),
    right: inset(format.pageWidthMm - xMm - format.labelWidthMm),
    bottom: inset(format.pageHeightMm - yMm - format.labelHeightMm),
  };
}
