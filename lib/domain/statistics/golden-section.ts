/** Each step keeps this share of the bracket. */
const KEPT = (Math.sqrt(5) - 1) / 2;

/**
 * The highest point of a function with a single peak between two ends, by golden sections.
 *
 * @param height      the function; it may be -Infinity at an end
 * @param from, to    the bracket, from < to
 * @param iterations  each shortens the bracket to 0.618 of itself: 40 to 4e-9. Near a smooth peak the height is then known
 *                    to the square of that
 * @returns where the highest value seen lies, and that value; the ends are among those seen
 * Checked in tests/domain/statistics/golden-section.test.ts
 */
export function highestBetween(
  height: (x: number) => number,
  from: number,
  to: number,
  iterations: number,
): { x: number; height: number } {
  let best = { x: from, height: height(from) };
  const look = (x: number): number => {
    const found = height(x);
    if (found > best.height) best = { x, height: found };
    return found;
  };
  look(to);
  let [low, high] = [from, to];
  let left = high - KEPT * (high - low);
  let right = low + KEPT * (high - low);
  let atLeft = look(left);
  let atRight = look(right);
  for (let step = 0; step < iterations; step++) {
    if (atLeft >= atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - KEPT * (high - low);
      atLeft = look(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + KEPT * (high - low);
      atRight = look(right);
    }
  }
  return best;
}
