import 'server-only';
import type { CodeMatrix } from '@/lib/domain/labels/code-size';
import { packetCode } from '@/lib/domain/labels/code-text';
import { labelCells } from '@/lib/domain/labels/label-cells';
import type { LabelContent, LabelPart } from '@/lib/domain/labels/label-content';
import { type LabelFormat, labelsPerPage } from '@/lib/domain/labels/label-format';
import { type LabelLayout, layoutLabel } from '@/lib/domain/labels/layout-label';
import { type LabelPage, layoutPage, type PrintRun, packetsOnPage, pageCount } from '@/lib/domain/labels/layout-pages';
import { encodeCode } from './encode-code';

/** Labels to be printed: PDF and preview are made from the same. */
export interface LabelRun {
  format: LabelFormat;
  run: PrintRun;
  contents: readonly LabelContent[];
  /** where phones reach this bank; null: codes hold numbers only */
  bankAddress: string | null;
}

/** Most labels of one run: sixty sheets or a whole roll. */
export const MOST_LABELS = 2000;

export const pagesOf = ({ format, contents, run }: LabelRun): number => pageCount(format, contents.length, run);

/** One page as it will be printed; from 0. */
export function pageOfRun({ format, run, contents, bankAddress }: LabelRun, page: number) {
  const labels = packetsOnPage(format, contents.length, run, page).map((packet) => {
    const content = packet === null ? undefined : contents[packet];
    return content ? { content, code: encodeCode(format.code, packetCode(content.packetNumber, bankAddress)) } : null;
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
  refused: { packetNumber: string; problem: Extract<LabelLayout, { ok: false }> } | null;
  /** on how many labels a part is left out or cut */
  leftOut: Map<LabelPart, number>;
  cut: Map<LabelPart, number>;
  /** letters that are printed as '?' */
  missing: string[];
}

/**
 * Lays out every label of a run without encoding its code: codes of texts as long as each other are of one size.
 *
 * Checked in tests/server/labels/print-run.test.ts
 */
export function remarksOn({ format, run, contents, bankAddress }: LabelRun): RunRemarks {
  const remarks: RunRemarks = { refused: null, leftOut: new Map(), cut: new Map(), missing: [] };
  const missing = new Set<string>();
  const sizes = new Map<number, CodeMatrix>();
  const cells = labelCells(format);
  const size = { widthMm: format.labelWidthMm, heightMm: format.labelHeightMm };
  for (let index = 0; index < contents.length * run.copies; index++) {
    const content = contents[Math.floor(index / run.copies)];
    const cell = cells[(run.start - 1 + index) % labelsPerPage(format)];
    if (!content || !cell) continue;
    const text = packetCode(content.packetNumber, bankAddress);
    const code = sizes.get(text.length) ?? encodeCode(format.code, text);
    sizes.set(text.length, code);
    const layout = layoutLabel({ content, code }, size, cell.insets);
    if (!layout.ok) {
      remarks.refused ??= { packetNumber: content.packetNumber, problem: layout };
      continue;
    }
    for (const part of layout.drawing.leftOut) remarks.leftOut.set(part, (remarks.leftOut.get(part) ?? 0) + 1);
    for (const part of layout.drawing.cut) remarks.cut.set(part, (remarks.cut.get(part) ?? 0) + 1);
    for (const letter of layout.drawing.missing) missing.add(letter);
  }
  remarks.missing = [...missing];
  return remarks;
}
