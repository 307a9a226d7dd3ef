/*
 * How much of a lot a test may use up. What regrowing it takes must stay, or the test would kill what it is to protect; and
 * this will not be its last test.
 */

/** Of all the seed there is. Without a forecast nobody can say what regrowing takes, and this alone holds. Our own choice. */
const MOST_OF_IT = 1 / 2;
/** Where all the seed is not enough to regrow the lot surely, every seed counts: one in ten may go. Our own choice. */
const SHARE_OF_TOO_LITTLE = 1 / 10;

/**
 * Seeds of a lot that a test may use.
 *
 * @param held    seeds in the bank's own packets, integer >= 0
 * @param needed  seeds to sow to regrow the lot once, in the next season, integer >= 0; Infinity when no number is enough;
 *                null without a forecast
 * @returns integer from 0 to `held`
 * @throws RangeError when an argument is outside its range
 * Checked in tests/domain/germination/plan/seed-for-test.test.ts
 */
export function seedForTest(held: number, needed: number | null): number {
  if (!Number.isInteger(held) || held < 0) {
    throw new RangeError(`seedForTest: held must be an integer >= 0, got ${held}`);
  }
  if (needed !== null && !(needed >= 0)) throw new RangeError(`seedForTest: needed must be >= 0, got ${needed}`);
  const most = Math.floor(held * MOST_OF_IT);
  if (needed === null) return most;
  if (needed > held) return Math.floor(held * SHARE_OF_TOO_LITTLE);
  return Math.min(most, held - Math.ceil(needed));
}
