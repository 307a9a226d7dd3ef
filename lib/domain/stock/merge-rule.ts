/**
 * Which of two packets of a lot is kept when one is poured into the other. The kept packet's storage history stands for
 * all the seed from then on, so it must be the harder one: a forecast that is too low costs a test, one that is too high
 * costs the lot. Why: docs/decisions/018-history-of-merged-seed.md.
 */

/** Probits of ageing that make no difference: at 90 % alive, two seeds in a thousand. */
const NO_DIFFERENCE_PROBITS = 0.01;

/**
 * @param keptProbits    ageing of the packet that is to be kept, probits, >= 0; null where none can be reckoned
 * @param pouredProbits  of the packet that is poured into it; likewise
 * @returns 'fine', or 'poured-aged-more' when the kept packet would make the seed look younger than part of it is. Seed
 *          whose ageing cannot be reckoned counts as the older: kept, it says so; poured away, it would be forgotten
 * @throws RangeError when a figure is not a finite number >= 0
 * Checked in tests/domain/stock/merge-rule.test.ts
 */
export function judgeMerge(keptProbits: number | null, pouredProbits: number | null): 'fine' | 'poured-aged-more' {
  for (const probits of [keptProbits, pouredProbits]) {
    if (probits !== null && !(probits >= 0 && Number.isFinite(probits))) {
      throw new RangeError(`judgeMerge: ageing must be a finite number >= 0 or null, got ${probits}`);
    }
  }
  if (keptProbits === null) return 'fine';
  if (pouredProbits === null) return 'poured-aged-more';
  return pouredProbits > keptProbits + NO_DIFFERENCE_PROBITS ? 'poured-aged-more' : 'fine';
}
