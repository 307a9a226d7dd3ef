import type { LabelFormat } from './label-format';

/**
 * Sizes that label sheets and rolls are sold in everywhere. Status: common practice. The sizes of labels and their number
 * on an A4 sheet (210 x 297 mm) are what packs say; gaps and margins follow from them, the labels standing in the middle
 * of the sheet, with 2.5 mm between columns where the sheet has a gap. Whoever has another sheet enters its own format.
 */

const A4 = { pageWidthMm: 210, pageHeightMm: 297 };

export interface NamedFormat extends LabelFormat {
  key: string;
  name: string;
}

function sheet(columns: number, rows: number, widthMm: number, heightMm: number, gapMm = 0): NamedFormat {
  const pitchXMm = tenths(widthMm + gapMm);
  return {
    key: `a4-${columns * rows}`,
    name: `A4, ${columns * rows} labels of ${widthMm} × ${heightMm} mm`,
    kind: 'sheet',
    ...A4,
    labelWidthMm: widthMm,
    labelHeightMm: heightMm,
    columns,
    rows,
    marginLeftMm: hundredths((A4.pageWidthMm - (columns - 1) * pitchXMm - widthMm) / 2),
    marginTopMm: hundredths((A4.pageHeightMm - rows * heightMm) / 2),
    pitchXMm,
    pitchYMm: heightMm,
    code: 'qr',
  };
}

function roll(widthMm: number, heightMm: number): NamedFormat {
  return {
    key: `roll-${widthMm}x${heightMm}`,
    name: `Roll, ${widthMm} × ${heightMm} mm`,
    kind: 'roll',
    pageWidthMm: widthMm,
    pageHeightMm: heightMm,
    labelWidthMm: widthMm,
    labelHeightMm: heightMm,
    columns: 1,
    rows: 1,
    marginLeftMm: 0,
    marginTopMm: 0,
    pitchXMm: widthMm,
    pitchYMm: heightMm,
    code: 'qr',
  };
}

// Without the noise of binary fractions, which a form would show.
const tenths = (mm: number) => Math.round(mm * 10) / 10;
const hundredths = (mm: number) => Math.round(mm * 100) / 100;

export const COMMON_FORMATS: readonly NamedFormat[] = [
  sheet(3, 8, 70, 37),
  sheet(3, 7, 63.5, 38.1, 2.5),
  sheet(4, 10, 52.5, 29.7),
  sheet(5, 13, 38.1, 21.2, 2.5),
  roll(50, 25),
  roll(57, 32),
  roll(62, 29),
  roll(100, 50),
];
