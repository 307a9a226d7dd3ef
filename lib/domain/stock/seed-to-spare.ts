/**
 * How much of a lot can be given away: what is left over once the bank has kept enough to regrow the lot twice (the
 * second time because the first may fail) and to test it meanwhile.
 *
 * Kept seed must lie in the bank's own packets: a duplicate at a partner bank is there for the day on which the house
 * burns down, and does not count. Base stock counts as kept but is not drawn from, so only active stock is ever spare.
 */

/** Sowings that must stay possible. One fails to frost, geese or crossing; a second is the rule. Our choice. */
export const REGROWINGS_KEPT = 2;
/** Seeds kept for tests: one of four dishes of fifty, or two of four dishes of twenty-five. Our choice. */
export const SEEDS_KEPT_FOR_TESTS = 200;

/** What of a lot lies in the bank's own packets: whole seeds, >= 0. */
export interface OwnSeed {
  active: number;
  base: number;
}

export type SeedToSpare =
  | {
      ok: true;
      /** seeds that may go, from active stock; 0 <= spare <= active */
      spare: number;
      /** seeds that must stay, in active and base stock together */
      kept: number;
    }
  | {
      ok: false;
      /** 'no-forecast': nobody can reckon how many seeds a regrowing takes; 'may-be-dead': no number is sure to do */
      reason: 'no-forecast' | 'may-be-dead';
    };

/**
 * Seeds of a lot that can be given away.
 *
 * @param active, base  seeds in the bank's own active and base packets, whole, >= 0
 * @param forRegrowing  seeds to sow for all REGROWINGS_KEPT regrowings, one a season, from seedsForRegrowings: integer >= 1;
 *                      Infinity when no number is enough; null without a forecast
 * @returns spare = min(active, active + base - kept), never below 0, with kept = forRegrowing +
 *          SEEDS_KEPT_FOR_TESTS; or why that cannot be said
 * @throws RangeError when an argument is outside its range
 * @see docs/methods/seed-to-spare.md
 * Checked in tests/domain/stock/seed-to-spare.test.ts
 */
export function seedToSpare({ active, base, forRegrowing }: OwnSeed & { forRegrowing: number | null }): SeedToSpare {
  requireSeeds('active', active);
  requireSeeds('base', base);
  if (forRegrowing === null) return { ok: false, reason: 'no-forecast' };
  if (forRegrowing === Number.POSITIVE_INFINITY) return { ok: false, reason: 'may-be-dead' };
  if (!Number.isInteger(forRegrowing) || forRegrowing < 1) {
    throw new RangeError(`seedToSpare: forRegrowing must be an integer >= 1, Infinity or null, got ${forRegrowing}`);
  }
  const kept = forRegrowing + SEEDS_KEPT_FOR_TESTS;
  return { ok: true, spare: Math.max(0, Math.min(active, active + base - kept)), kept };
}

function requireSeeds(name: string, seeds: number): void {
  if (!Number.isInteger(seeds) || seeds < 0) {
    throw new RangeError(`seedToSpare: ${name} must be an integer >= 0, got ${seeds}`);
  }
}
