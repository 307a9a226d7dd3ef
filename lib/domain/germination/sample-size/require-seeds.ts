/**
 * Refuses what is no number of seeds.
 *
 * @param functionName  the caller, named in the message
 * @param argument      named in the message
 * @param value         what should be an integer
 * @param least         the fewest allowed, integer
 * @throws RangeError naming the caller, the argument and the value
 * Checked through its callers: tests/domain/germination/sample-size/seeds-for-width.test.ts and the others
 */
export function requireSeeds(functionName: string, argument: string, value: number, least: number): void {
  if (!Number.isSafeInteger(value) || value < least) {
    throw new RangeError(`${functionName}: ${argument} must be a whole number of at least ${least}, got ${value}`);
  }
}
