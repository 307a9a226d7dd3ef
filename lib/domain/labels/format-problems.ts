import type { LabelFormat } from './label-format';

/** Lengths beyond these are slips of the pen: 0.5 m is the widest paper of a small printer, 10 mm the least label. */
export const PAGE_MM = { min: 10, max: 500 } as const;
export const LABEL_MM = { min: 10, max: 300 } as const;
export const MARGIN_MM = { min: 0, max: 300 } as const;
export const LABELS_ACROSS = { min: 1, max: 30 } as const;

/** Rounding of sizes as printed on packs: labels that stand over the page by less than this still fit. */
const ROUNDING_MM = 0.05;

export type FormatField = Exclude<keyof LabelFormat, 'kind' | 'code'>;

/**
 * Why labels would overlap or not lie on their page.
 *
 * @param format  lengths in mm, each within its range
 * @returns the field to change and what to do, nothing when the format is sound
 * Checked in tests/domain/labels/label-formats.test.ts
 */
export function formatProblems(format: LabelFormat): { field: FormatField; message: string }[] {
  const problems: { field: FormatField; message: string }[] = [];
  const across = format.marginLeftMm + (format.columns - 1) * format.pitchXMm + format.labelWidthMm;
  const down = format.marginTopMm + (format.rows - 1) * format.pitchYMm + format.labelHeightMm;
  if (format.columns > 1 && format.pitchXMm < format.labelWidthMm) {
    problems.push({
      field: 'pitchXMm',
      message: `Labels would overlap: write at least ${format.labelWidthMm} mm, the width of a label.`,
    });
  } else if (across > format.pageWidthMm + ROUNDING_MM) {
    problems.push({ field: 'columns', message: tooLong('columns', across, format.pageWidthMm, 'wide') });
  }
  if (format.rows > 1 && format.pitchYMm < format.labelHeightMm) {
    problems.push({
      field: 'pitchYMm',
      message: `Labels would overlap: write at least ${format.labelHeightMm} mm, the height of a label.`,
    });
  } else if (down > format.pageHeightMm + ROUNDING_MM) {
    problems.push({ field: 'rows', message: tooLong('rows', down, format.pageHeightMm, 'high') });
  }
  return problems;
}

const tooLong = (what: string, reachMm: number, pageMm: number, direction: string) =>
  `These ${what} reach to ${shown(reachMm)} mm, but the page is ${shown(pageMm)} mm ${direction}: check the count, the size, the margin and the step.`;

const shown = (mm: number) => Number(mm.toFixed(2));
