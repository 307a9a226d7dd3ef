import { type LabelCell, labelCells } from './label-cells';
import type { LabelDrawing } from './label-drawing';
import { type LabelFormat, labelsPerPage } from './label-format';
import { type LabelLayout, type LabelToPrint, layoutLabel } from './layout-label';

/** How a print run is laid on paper. */
export interface PrintRun {
  /** the first label to print on, counted along the rows from 1: those before it are used up */
  start: number;
  /** labels of each packet or bag, one after the other */
  copies: number;
  /** for a printer that prints shifted: to the right and down, mm */
  shiftXMm: number;
  shiftYMm: number;
}

export interface LabelPage {
  widthMm: number;
  heightMm: number;
  labels: PlacedLabel[];
}

/** A label on its page; the drawing is counted from xMm, yMm. */
export interface PlacedLabel {
  xMm: number;
  yMm: number;
  drawing: LabelDrawing;
}

/** Pages that a run takes. */
export function pageCount(format: LabelFormat, labelled: number, { start, copies }: PrintRun): number {
  return Math.ceil((start - 1 + labelled * copies) / labelsPerPage(format));
}

/** The packets or bags, by their place in the list, whose labels stand on a page (from 0), each as often as it stands there. */
export function labelledOnPage(format: LabelFormat, labelled: number, run: PrintRun, page: number): (number | null)[] {
  const perPage = labelsPerPage(format);
  return Array.from({ length: perPage }, (_, place) => {
    const running = page * perPage + place - (run.start - 1);
    return running >= 0 && running < labelled * run.copies ? Math.floor(running / run.copies) : null;
  });
}

/**
 * One page of a print run: PDF and preview both draw what this gives.
 *
 * @param format  a sound format
 * @param labels  what stands at each place of the page, in the order of labelCells; null leaves a label blank
 * @returns the page, or the first label that cannot be laid out and why
 * Checked in tests/domain/labels/layout-pages.test.ts
 */
export function layoutPage(
  format: LabelFormat,
  labels: readonly (LabelToPrint | null)[],
  { shiftXMm, shiftYMm }: Pick<PrintRun, 'shiftXMm' | 'shiftYMm'>,
): { ok: true; page: LabelPage } | { ok: false; called: string; problem: Extract<LabelLayout, { ok: false }> } {
  const placed: PlacedLabel[] = [];
  const cells: LabelCell[] = labelCells(format);
  for (const [index, cell] of cells.entries()) {
    const label = labels[index];
    if (!label) continue;
    const size = { widthMm: format.labelWidthMm, heightMm: format.labelHeightMm };
    const layout = layoutLabel(label, size, cell.insets);
    if (!layout.ok) return { ok: false, called: label.text.called, problem: layout };
    placed.push({ xMm: cell.xMm + shiftXMm, yMm: cell.yMm + shiftYMm, drawing: layout.drawing });
  }
  return { ok: true, page: { widthMm: format.pageWidthMm, heightMm: format.pageHeightMm, labels: placed } };
}
