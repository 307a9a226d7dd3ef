import type { CodeKind } from './label-format';

/** A code as dark and light squares, `rows[y][x]`, without its quiet zone. */
export interface CodeMatrix {
  kind: CodeKind;
  rows: readonly (readonly boolean[])[];
}

/** Thermal printers have 203 dots an inch: 8 a millimetre. Squares of whole dots come out even. */
export const DOT_MM = 0.125;
/** Squares of fewer dots run together where the print head is worn or the paper moves. Status: common practice. */
const LEAST_DOTS = 3;
/** Larger squares are read no better and take the room of words. */
const MOST_DOTS = 5;

/**
 * Blank squares that must stand round a code. ISO/IEC 18004 demands 4 for QR; ISO/IEC 16022 demands 1 for Data Matrix,
 * of which two are kept, because labels are cut close. From memory of both standards.
 */
export const QUIET_SQUARES: Readonly<Record<CodeKind, number>> = { qr: 4, 'data-matrix': 2 };

/** Squares along one side, quiet zone included. */
export const squaresAcross = (code: CodeMatrix): number => code.rows.length + 2 * QUIET_SQUARES[code.kind];

/** The least side of a code, quiet zone included, that a 203 dpi printer prints readably; mm. */
export const leastCodeSideMm = (code: CodeMatrix): number => squaresAcross(code) * LEAST_DOTS * DOT_MM;

/**
 * Sizes of one square that fit a room, largest first.
 *
 * @param code    the code
 * @param roomMm  side of the square room there is for it, quiet zone included
 * @returns sizes in mm, each a whole number of dots of a 203 dpi printer; none when the code would be too small to read
 * Checked in tests/domain/labels/layout-label.test.ts
 */
export function squareSizesMm(code: CodeMatrix, roomMm: number): number[] {
  // A hair of tolerance: 13.875 mm must hold 37 squares of 0.375 mm whatever the rounding.
  const fits = Math.floor(roomMm / squaresAcross(code) / DOT_MM + 1e-9);
  const sizes: number[] = [];
  for (let dots = Math.min(MOST_DOTS, fits); dots >= LEAST_DOTS; dots--) sizes.push(dots * DOT_MM);
  return sizes;
}
