/**
 * How many letters must be put in, taken out or changed to turn one word into the other (Levenshtein 1966).
 *
 * @param a, b   words
 * @param limit  give up beyond this distance
 * @returns the distance, or limit + 1 when it is larger than the limit
 * Checked in tests/domain/spreadsheet/plain-words.test.ts
 */
export function editDistance(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) > limit) return limit + 1;
  let previous = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let row = 1; row <= a.length; row += 1) {
    const current = [row];
    let least = row;
    for (let column = 1; column <= b.length; column += 1) {
      const change = (previous[column - 1] ?? 0) + (a[row - 1] === b[column - 1] ? 0 : 1);
      const distance = Math.min(change, (previous[column] ?? 0) + 1, (current[column - 1] ?? 0) + 1);
      current.push(distance);
      least = Math.min(least, distance);
    }
    if (least > limit) return limit + 1;
    previous = current;
  }
  return Math.min(previous[b.length] ?? 0, limit + 1);
}
