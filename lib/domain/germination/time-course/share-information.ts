import { type CoveredStretches, coveredShares } from './covered-stretches';

/**
 * Observed information of the free shares, the balance taking what they give: minus the curvature of the log-likelihood.
 *
 * @param shares        as found, each observation covering more than nothing
 * @param observations  see CoveredStretches
 * @param free          stretches whose shares are parameters, in order
 * @param balance       the stretch that holds the rest, after all of them
 * @returns a symmetric matrix, rows and columns in the order of `free`
 * Checked through the band of germinationCurve: tests/golden/germination-time-course.json
 */
export function shareInformation(
  shares: readonly number[],
  observations: readonly CoveredStretches[],
  free: readonly number[],
  balance: number,
): number[][] {
  const covered = coveredShares(shares, observations);
  const size = free.length;
  // How many free stretches lie before each stretch.
  const freeBefore = [0];
  for (let stretch = 0, seen = 0; stretch < shares.length; stretch++) {
    if (free[seen] === stretch) seen++;
    freeBefore.push(seen);
  }
  // An observation's derivative is 1 / share on the free stretches it covers; if it covers the balance as well, it is
  // -1 / share on those before it. Either way its square fills one square block, which is noted at the corners and
  // summed up at the end: the cost is the stretches squared, not that times the observations.
  const matrix = Array.from({ length: size + 1 }, () => new Array<number>(size + 1).fill(0));
  const note = (row: number, column: number, weight: number) => {
    const line = matrix[row];
    if (line) line[column] = (line[column] ?? 0) + weight;
  };
  for (const [i, { first, last, seeds }] of observations.entries()) {
    const weight = seeds / (covered[i] ?? 0) ** 2;
    const from = last >= balance ? 0 : (freeBefore[first] ?? 0);
    const to = last >= balance ? (freeBefore[first] ?? 0) : (freeBefore[last + 1] ?? 0);
    note(from, from, weight);
    note(from, to, -weight);
    note(to, from, -weight);
    note(to, to, weight);
  }
  for (const row of matrix) for (let c = 1; c < size; c++) row[c] = (row[c] ?? 0) + (row[c - 1] ?? 0);
  for (let r = 1; r < size; r++) {
    for (let c = 0; c < size; c++) note(r, c, matrix[r - 1]?.[c] ?? 0);
  }
  return matrix.slice(0, size).map((row) => row.slice(0, size));
}
