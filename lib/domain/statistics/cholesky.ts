/*
 * The Cholesky factor of a small symmetric matrix: for steps of Newton's method and for covariances, which are inverses
 * of information matrices. A matrix that is not positive definite has no factor: null, never NaN.
 */

/** Below this share of its diagonal element a pivot is rounding error: the matrix has no inverse in double precision. */
const LEAST_PIVOT = 1e-14;

/**
 * Lower triangle L with L Lᵀ = matrix.
 *
 * @param matrix  square and symmetric; only its lower triangle is read
 * @returns L, or null when the matrix is not positive definite to fourteen digits
 * Checked through `choleskyInverse`: tests/domain/statistics/cholesky.test.ts
 */
export function choleskyFactor(matrix: readonly (readonly number[])[]): number[][] | null {
  const factor: number[][] = [];
  for (const [i, row] of matrix.entries()) {
    const current: number[] = [];
    factor.push(current);
    for (let j = 0; j <= i; j++) {
      const other = factor[j] as number[];
      let rest = row[j] as number;
      for (let k = 0; k < j; k++) rest -= (current[k] as number) * (other[k] as number);
      if (j < i) current.push(rest / (other[j] as number));
      else if (rest > LEAST_PIVOT * (row[i] as number)) current.push(Math.sqrt(rest));
      else return null;
    }
  }
  return factor;
}

/**
 * Solves L Lᵀ x = b.
 *
 * @param factor  L, from choleskyFactor
 * @param right   b, as long as L has rows
 * @returns x
 * Checked through `choleskyInverse`: tests/domain/statistics/cholesky.test.ts
 */
export function choleskySolve(factor: readonly (readonly number[])[], right: readonly number[]): number[] {
  const size = factor.length;
  const at = (i: number, j: number) => factor[i]?.[j] as number;
  const x = [...right];
  for (let i = 0; i < size; i++) {
    let rest = x[i] as number;
    for (let k = 0; k < i; k++) rest -= at(i, k) * (x[k] as number);
    x[i] = rest / at(i, i);
  }
  for (let i = size - 1; i >= 0; i--) {
    let rest = x[i] as number;
    for (let k = i + 1; k < size; k++) rest -= at(k, i) * (x[k] as number);
    x[i] = rest / at(i, i);
  }
  return x;
}

/**
 * Inverse of a symmetric positive definite matrix, such as a covariance from an information matrix.
 *
 * @param matrix  square and symmetric
 * @returns the inverse, symmetric; null when the matrix has none (see choleskyFactor)
 * Checked against inverses known in closed form and against the identity: tests/domain/statistics/cholesky.test.ts
 */
export function choleskyInverse(matrix: readonly (readonly number[])[]): number[][] | null {
  const factor = choleskyFactor(matrix);
  if (!factor) return null;
  const columns = matrix.map((_, j) =>
    choleskySolve(
      factor,
      matrix.map((__, i) => (i === j ? 1 : 0)),
    ),
  );
  return columns.map((column, i) => column.map((value, j) => (value + (columns[j]?.[i] as number)) / 2));
}
