/**
 * Columns made independent of each other before a fit: temperature and its square nearly repeat one another, and a
 * likelihood is climbed badly along columns that do. Modified Gram-Schmidt, Z = X R^-1 with columns of mean square 1.
 */

/** A column of which less than this is left after the ones before it are taken out repeats them. */
const LEAST_REMAINDER = 1e-9;

export interface OrthogonalColumns {
  /** the rows in the new columns */
  rows: number[][];
  /** upper triangle: new coefficients = R old ones */
  triangle: number[][];
}

/**
 * Makes the columns of a design independent.
 *
 * @param design  rows of equally many finite numbers
 * @returns the new rows with R; or the number of the first column that only repeats the ones before it
 * Checked through `fitDecline`: tests/domain/longevity/storage-experiment/decline-model.test.ts
 */
export function orthogonalColumns(design: readonly (readonly number[])[]): OrthogonalColumns | { repeats: number } {
  const count = design[0]?.length ?? 0;
  const columns = Array.from({ length: count }, (_, j) => design.map((row) => row[j] as number));
  const triangle = columns.map(() => new Array<number>(count).fill(0));
  for (const [j, column] of columns.entries()) {
    const before = rootMeanSquare(column);
    // Twice: the second pass takes out what rounding left in the first.
    for (let pass = 0; pass < 2; pass++) {
      for (let k = 0; k < j; k++) {
        const other = columns[k] as number[];
        const share = column.reduce((sum, value, i) => sum + value * (other[i] as number), 0) / column.length;
        for (const [i, value] of other.entries()) column[i] = (column[i] as number) - share * value;
        (triangle[k] as number[])[j] = (triangle[k]?.[j] ?? 0) + share;
      }
    }
    const rest = rootMeanSquare(column);
    if (!(rest > LEAST_REMAINDER * before)) return { repeats: j };
    (triangle[j] as number[])[j] = rest;
    for (const [i, value] of column.entries()) column[i] = value / rest;
  }
  return { rows: design.map((_, i) => columns.map((column) => column[i] as number)), triangle };
}

/**
 * Old coefficients for new ones: solves R old = fresh.
 *
 * @param triangle  R, from orthogonalColumns
 * @param fresh     as many as R has rows
 * @returns coefficients of the columns as they were given
 * Checked through fitDecline against R: tests/domain/longevity/storage-experiment/decline-model.test.ts
 */
export function oldCoefficients(triangle: readonly (readonly number[])[], fresh: readonly number[]): number[] {
  const old = [...fresh];
  for (let i = old.length - 1; i >= 0; i--) {
    for (let k = i + 1; k < old.length; k++) old[i] = (old[i] as number) - (triangle[i]?.[k] ?? 0) * (old[k] as number);
    old[i] = (old[i] as number) / (triangle[i]?.[i] as number);
  }
  return old;
}

/**
 * New coefficients for old ones.
 *
 * @param triangle  R, from orthogonalColumns
 * @param old       coefficients of the columns as they were given
 * @returns R old
 * Checked through fitDecline against R: tests/domain/longevity/storage-experiment/decline-model.test.ts
 */
export function newCoefficients(triangle: readonly (readonly number[])[], old: readonly number[]): number[] {
  return triangle.map((row) => row.reduce((sum, value, k) => sum + value * (old[k] as number), 0));
}

function rootMeanSquare(column: readonly number[]): number {
  return Math.sqrt(column.reduce((sum, value) => sum + value * value, 0) / column.length);
}
