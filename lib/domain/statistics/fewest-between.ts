/**
 * The fewest of something of which one more never does harm: closes a bracket of whole numbers by halving.
 *
 * @param isEnough  whether a number is enough; true for all numbers from some number on
 * @param tooFew    integer that is known not to be enough; it is not tried
 * @param enough    integer above it that is known to be; it is not tried
 * @returns integer, tooFew < n <= enough: the fewest that is enough
 * Checked in tests/domain/statistics/fewest-between.test.ts
 */
export function fewestBetween(isEnough: (count: number) => boolean, tooFew: number, enough: number): number {
  let [less, more] = [tooFew, enough];
  while (more - less > 1) {
    const middle = Math.floor((less + more) / 2);
    if (isEnough(middle)) more = middle;
    else less = middle;
  }
  return more;
}
