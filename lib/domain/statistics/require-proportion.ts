/**
 * Refuses what is no proportion: from 0 to 1, or strictly between them.
 *
 * @param functionName  the caller, named in the message
 * @param argument      named in the message
 * @param value         what should be a proportion or a probability: 0.95, not 95
 * @param open          true refuses 0 and 1 too
 * @throws RangeError naming the caller, the argument and the value
 * Checked through its callers: tests/domain/germination/time-course/wilson-for-share.test.ts and the others
 */
export function requireProportion(functionName: string, argument: string, value: number, open = false): void {
  if (!(open ? value > 0 && value < 1 : value >= 0 && value <= 1)) {
    throw new RangeError(`${functionName}: ${argument} must be in ${open ? '(0, 1)' : '[0, 1]'}, got ${value}`);
  }
}
