const MAX_ITERATIONS = 200;

/**
 * Where a continuous function crosses 0 between two points at which it has different signs: false position, with the
 * Illinois rule that halves the weight of an end that stays.
 *
 * @param at          the function
 * @param from, to    two points, in either order, with at(from) and at(to) of opposite sign or 0
 * @param tolerance   stops when the bracket, or the value, is this small
 * @returns the crossing
 * @throws RangeError when the signs are the same
 * @see Dowell & Jarratt (1971), BIT 11:168-174 (from memory)
 * Checked in tests/domain/statistics/root-between.test.ts
 */
export function rootBetween(at: (x: number) => number, from: number, to: number, tolerance: number): number {
  let [a, b] = [from, to];
  let [atA, atB] = [at(a), at(b)];
  if (atA === 0) return a;
  if (!(atA * atB <= 0)) throw new RangeError(`rootBetween: at(${from}) = ${atA} and at(${to}) = ${atB} share a sign`);
  for (let step = 0; step < MAX_ITERATIONS && Math.abs(b - a) > tolerance && atB !== 0; step++) {
    // Every third step halves: false position alone creeps where one end is far steeper than the other.
    const next = step % 3 === 2 ? (a + b) / 2 : b - (atB * (b - a)) / (atB - atA);
    const atNext = at(next);
    if (atNext * atB < 0) {
      [a, atA] = [b, atB];
    } else {
      atA /= 2;
    }
    [b, atB] = [next, atNext];
    if (Math.abs(atNext) <= tolerance) break;
  }
  return b;
}
