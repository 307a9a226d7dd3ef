import type { CodeKind, LabelFormat, LabelKind } from './label-format';

/** What somebody says of a format: on a roll, and on a sheet without gaps or margins, less needs to be said. mm. */
export interface FormatGiven {
  kind: LabelKind;
  labelWidthMm: number;
  labelHeightMm: number;
  pageWidthMm?: number | undefined;
  pageHeightMm?: number | undefined;
  columns?: number | undefined;
  rows?: number | undefined;
  marginLeftMm?: number | undefined;
  marginTopMm?: number | undefined;
  pitchXMm?: number | undefined;
  pitchYMm?: number | undefined;
  code: CodeKind;
}

const A4_MM = { width: 210, height: 297 };

/**
 * A format made whole: a roll's page is its label; a sheet is A4 unless said otherwise, and its labels stand close
 * together unless a step is given.
 *
 * Checked in tests/domain/labels/label-formats.test.ts
 */
export function completeFormat(given: FormatGiven): LabelFormat {
  const { kind, labelWidthMm, labelHeightMm, code } = given;
  const isRoll = kind === 'roll';
  return {
    kind,
    code,
    labelWidthMm,
    labelHeightMm,
    pageWidthMm: isRoll ? labelWidthMm : (given.pageWidthMm ?? A4_MM.width),
    pageHeightMm: isRoll ? labelHeightMm : (given.pageHeightMm ?? A4_MM.height),
    columns: isRoll ? 1 : (given.columns ?? 1),
    rows: isRoll ? 1 : (given.rows ?? 1),
    marginLeftMm: isRoll ? 0 : (given.marginLeftMm ?? 0),
    marginTopMm: isRoll ? 0 : (given.marginTopMm ?? 0),
    pitchXMm: isRoll ? labelWidthMm : (given.pitchXMm ?? labelWidthMm),
    pitchYMm: isRoll ? labelHeightMm : (given.pitchYMm ?? labelHeightMm),
  };
}
