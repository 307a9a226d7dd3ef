/** A seed interval in terms of stretches: it covers those from first to last, both included. */
export interface CoveredStretches {
  first: number;
  last: number;
  seeds: number;
}

/**
 * The share that each observation's stretches hold together: its chance.
 *
 * @param shares        of all seeds, one a stretch
 * @param observations  see CoveredStretches
 * @returns shares in the order of the observations
 * Checked through likeliestShares: tests/golden/germination-time-course.json
 */
export function coveredShares(shares: readonly number[], observations: readonly CoveredStretches[]): number[] {
  return observations.map(({ first, last }) => {
    let sum = 0;
    for (let stretch = first; stretch <= last; stretch++) sum += shares[stretch] ?? 0;
    return sum;
  });
}
