import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { COMMON_FORMATS } from '@/lib/domain/labels/common-formats';
import { formatProblems } from '@/lib/domain/labels/format-problems';
import { labelCells } from '@/lib/domain/labels/label-cells';
import type { LabelFormat } from '@/lib/domain/labels/label-format';

const A_TENTH = 0.1;
const HAIR = 1e-9;

/** Any sheet, sound or not, in tenths of a millimetre. */
const anySheet: fc.Arbitrary<LabelFormat> = fc.record({
  kind: fc.constant('sheet' as const),
  pageWidthMm: tenths(50, 300),
  pageHeightMm: tenths(50, 300),
  labelWidthMm: tenths(10, 100),
  labelHeightMm: tenths(10, 100),
  columns: fc.integer({ min: 1, max: 6 }),
  rows: fc.integer({ min: 1, max: 12 }),
  marginLeftMm: tenths(0, 30),
  marginTopMm: tenths(0, 30),
  pitchXMm: tenths(10, 110),
  pitchYMm: tenths(10, 110),
  code: fc.constantFrom('qr' as const, 'data-matrix' as const),
});

function tenths(min: number, max: number) {
  return fc.integer({ min: min * 10, max: max * 10 }).map((value) => value / 10);
}

function overlapsOrStandsOver(format: LabelFormat): boolean {
  const cells = labelCells(format);
  const { labelWidthMm: width, labelHeightMm: height } = format;
  const over = cells.some(
    ({ xMm, yMm }) =>
      xMm + width > format.pageWidthMm + 0.05 + HAIR || yMm + height > format.pageHeightMm + 0.05 + HAIR,
  );
  const overlap = cells.some((one, index) =>
    cells
      .slice(index + 1)
      .some((other) => Math.abs(one.xMm - other.xMm) < width - HAIR && Math.abs(one.yMm - other.yMm) < height - HAIR),
  );
  return over || overlap;
}

describe('formatProblems', () => {
  test('finds something exactly when labels overlap or stand over the page', () => {
    fc.assert(
      fc.property(anySheet, (format) => {
        expect(formatProblems(format).length > 0).toBe(overlapsOrStandsOver(format));
      }),
      { numRuns: 1000 },
    );
  });

  test('names the field: a step smaller than the label, one row too many', () => {
    const [sheet] = COMMON_FORMATS;
    if (!sheet) throw new Error('no format');
    expect(formatProblems({ ...sheet, pitchXMm: 69.9 }).map(({ field }) => field)).toEqual(['pitchXMm']);
    expect(formatProblems({ ...sheet, rows: 9 }).map(({ field }) => field)).toEqual(['rows']);
    expect(formatProblems({ ...sheet, marginLeftMm: 1 }).map(({ field }) => field)).toEqual(['columns']);
    expect(formatProblems({ ...sheet, rows: 9 })[0]?.message).toMatch(
      /reach to 333\.5 mm, but the page is 297 mm high/,
    );
  });
});

describe('common formats', () => {
  test.each(COMMON_FORMATS.map((format) => [format.name, format] as const))('%s fits its page', (_, format) => {
    expect(formatProblems(format)).toEqual([]);
  });

  test('sheets stand in the middle of the paper', () => {
    for (const format of COMMON_FORMATS) {
      const cells = labelCells(format);
      const right = Math.max(...cells.map((cell) => cell.xMm)) + format.labelWidthMm;
      const bottom = Math.max(...cells.map((cell) => cell.yMm)) + format.labelHeightMm;
      expect(Math.abs(format.pageWidthMm - right - format.marginLeftMm), format.name).toBeLessThan(A_TENTH);
      expect(Math.abs(format.pageHeightMm - bottom - format.marginTopMm), format.name).toBeLessThan(A_TENTH);
    }
  });

  test('content keeps away from the strip along the paper that printers leave blank', () => {
    for (const format of COMMON_FORMATS.filter(({ kind }) => kind === 'sheet')) {
      for (const { xMm, yMm, insets } of labelCells(format)) {
        expect(xMm + insets.left).toBeGreaterThanOrEqual(4.5 - HAIR);
        expect(yMm + insets.top).toBeGreaterThanOrEqual(4.5 - HAIR);
        expect(format.pageWidthMm - xMm - format.labelWidthMm + insets.right).toBeGreaterThanOrEqual(4.5 - HAIR);
        expect(format.pageHeightMm - yMm - format.labelHeightMm + insets.bottom).toBeGreaterThanOrEqual(4.5 - HAIR);
      }
    }
  });
});
