import 'server-only';
import type { CodeMatrix } from '@/lib/domain/labels/code-size';
import { labelCells } from '@/lib/domain/labels/label-cells';
import { type LabelFormat, labelsPerPage } from '@/lib/domain/labels/label-format';
import type { LabelPart, LabelText } from '@/lib/domain/labels/label-text';
import { type LabelLayout, layoutLabel } from '@/lib/domain/labels/layout-label';
import { type LabelPage, labelledOnPage, layoutPage, type PrintRun, pageCount } from '@/lib/domain/labels/layout-pages';
import { encodeCode } from './encode-code';

/** Labels to be printed: PDF and preview are made from the same. */
export interface LabelRun {
  format: LabelFormat;
  run: PrintRun;
  texts: readonly LabelText[];
}

/** Most labels of one run: sixty sheets or a whole roll. */
export const MOST_LABELS = 2000;

export const pagesOf = ({ format, texts, run }: LabelRun): number => pageCount(format, texts.length, run);

/** One page as it will be printed; from 0. */
export function pageOfRun({ format, run, texts }: LabelRun, page: number) {
  const labels = labelledOnPage(format, texts.length, run, page).map((place) => {
    const text = place === null ? undefined : texts[place];
    return text ? { text, code: encodeCode(format.code, text.codeText) } : null;
  });
  return layoutPage(format, labels, run);
}

/** Every page. Other requests are answered between two of them: encoding five hundred codes takes seconds. */
export async function allPages(
  labelRun: LabelRun,
): Promise<{ ok: true; pages: LabelPage[] } | Extract<ReturnType<typeof pageOfRun>, { ok: false }>> {
  const pages: LabelPage[] = [];
  for (let page = 0; page < pagesOf(labelRun); page++) {
    const laid = pageOfRun(labelRun, page);
    if (!laid.ok) return laid;
    pages.push(laid.page);
    await new Promise((resolve) => setImmediate(resolve));
  }
  return { ok: true, pages };
}

/** What somebody should know before printing. */
export interface RunRemarks {
  /** the first label that cannot be printed, and why */
  refused: { called: string; problem: Extract<LabelLayout, { ok: false }> } | null;
  /** on how many labels a part is left out or cut */
  leftOut: Map<LabelPart, number>;
  cut: Map<LabelPart, number>;
  /** letters that are printed as '?' */
  missing: string[];
}

/**
 * Lays out every label of a run without encoding its code: codes that differ only in their digits are of one size.
 *
 * Checked in tests/server/labels/print-run.test.ts
 */
export function remarksOn({ format, run, texts }: LabelRun): RunRemarks {
  const remarks: RunRemarks = { refused: null, leftOut: new Map(), cut: new Map(), missing: [] };
  const missing = new Set<string>();
  const sizes = new Map<string, CodeMatrix>();
  const cells = labelCells(format);
  const size = { widthMm: format.labelWidthMm, heightMm: format.labelHeightMm };
  for (let index = 0; index < texts.length * run.copies; index++) {
    const text = texts[Math.floor(index / run.copies)];
    const cell = cells[(run.start - 1 + index) % labelsPerPage(format)];
    if (!text || !cell) continue;
    const shape = text.codeText.replace(/\d/g, '0');
    const code = sizes.get(shape) ?? encodeCode(format.code, text.codeText);
    sizes.set(shape, code);
    const layout = layoutLabel({ text, code }, size, cell.insets);
    if (!layout.ok) {
      remarks.refused ??= { called: text.called, problem: layout };
      continue;
    }
    for (const part of layout.drawing.leftOut) remarks.leftOut.set(part, (remarks.leftOut.get(part) ?? 0) + 1);
    for (const part of layout.drawing.cut) remarks.cut.set(part, (remarks.cut.get(part) ?? 0) + 1);
    for (const letter of layout.drawing.missing) missing.add(letter);
  }
  remarks.missing = [...missing];
  return remarks;
}
