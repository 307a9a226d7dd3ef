/**
 * Refuses anything but a whole number of successes among a whole number of trials.
 *
 * @param functionName  the caller, named in the message
 * @param successes     count, integer, 0 <= successes <= trials
 * @param trials        count, integer, >= 0
 * @throws RangeError naming the caller, the argument and the value
 * Checked through its callers: tests/domain/statistics/binomial-interval.test.ts and the others
 */
export function requireCounts(functionName: string, successes: number, trials: number): void {
  if (!Number.isSafeInteger(trials) || trials < 0) {
    throw new RangeError(`${functionName}: trials must be a whole number of at least 0, got ${trials}`);
  }
  if (!Number.isSafeInteger(successes) || successes < 0 || successes > trials) {
    throw new RangeError(`${functionName}: successes must be a whole number from 0 to ${trials}, got ${successes}`);
  }
}
