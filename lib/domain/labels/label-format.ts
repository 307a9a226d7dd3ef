/**
 * A sheet of labels, or a roll where every label is a page of its own. All lengths in millimetres, measured on the paper
 * from its upper left corner; a pitch is the distance from the left (upper) edge of one label to that of the next.
 */
export interface LabelFormat {
  kind: LabelKind;
  pageWidthMm: number;
  pageHeightMm: number;
  labelWidthMm: number;
  labelHeightMm: number;
  columns: number;
  rows: number;
  marginLeftMm: number;
  marginTopMm: number;
  pitchXMm: number;
  pitchYMm: number;
  code: CodeKind;
}

export const LABEL_KINDS = [
  { key: 'sheet', label: 'sheet of labels' },
  { key: 'roll', label: 'roll, one label after the other' },
] as const;

export type LabelKind = (typeof LABEL_KINDS)[number]['key'];

export const LABEL_KIND_KEYS = LABEL_KINDS.map((kind) => kind.key) as [LabelKind, ...LabelKind[]];

/** QR codes are read by every phone; a Data Matrix needs less room, and hand scanners read it. */
export const CODE_KINDS = [
  { key: 'qr', label: 'QR code' },
  { key: 'data-matrix', label: 'Data Matrix' },
] as const;

export type CodeKind = (typeof CODE_KINDS)[number]['key'];

export const CODE_KIND_KEYS = CODE_KINDS.map((kind) => kind.key) as [CodeKind, ...CodeKind[]];

/** Labels on one page. */
export const labelsPerPage = (format: LabelFormat): number => format.columns * format.rows;
