const MOST_HALVINGS = 60;

/**
 * Where a statement stops being true on the way from one point to another, by halving: for a limit that is known only by
 * what holds on either side of it, such as the end of a profile-likelihood interval. (Where a continuous function crosses
 * 0 at this point, `rootBetween` takes fewer steps.)
 *
 * @param holds      the statement: true at `inside`, false at `outside`; neither end is tried
 * @param inside     a point where it holds
 * @param outside    a point where it does not, to either side
 * @param tolerance  stops when the bracket is this short, >= 0; at the latest after 60 halvings
 * @returns the two ends of the bracket, the point known to hold first
 * Checked in tests/domain/statistics/edge-between.test.ts
 */
export function edgeBetween(
  holds: (x: number) => boolean,
  inside: number,
  outside: number,
  tolerance: number,
): [inside: number, outside: number] {
  let [good, bad] = [inside, outside];
  for (let halving = 0; halving < MOST_HALVINGS && Math.abs(bad - good) > tolerance; halving++) {
    const middle = (good + bad) / 2;
    if (holds(middle)) good = middle;
    else bad = middle;
  }
  return [good, bad];
}
