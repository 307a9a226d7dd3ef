/**
 * The two ways to state seed moisture: percent of fresh weight (wet basis, the one this product shows) and percent of
 * dry weight (dry basis, used inside equilibrium equations). Both describe the same water: only the divisor differs.
 */

/**
 * Moisture as percent of fresh weight, from percent of dry weight.
 *
 * @param dryBasisPercent  grams of water per 100 g of dry matter, >= 0
 * @returns grams of water per 100 g of fresh seed, in [0, 100)
 * @throws RangeError when the argument is not a finite number >= 0
 * @see identity: 100 d / (100 + d)
 * Checked in tests/domain/moisture/basis.test.ts
 */
export function freshBasisFromDry(dryBasisPercent: number): number {
  if (!Number.isFinite(dryBasisPercent) || dryBasisPercent < 0) {
    throw new RangeError(`freshBasisFromDry: dryBasisPercent must be a finite number >= 0, got ${dryBasisPercent}`);
  }
  return (100 * dryBasisPercent) / (100 + dryBasisPercent);
}

/**
 * Moisture as percent of dry weight, from percent of fresh weight.
 *
 * @param moisturePercent  grams of water per 100 g of fresh seed, in [0, 100)
 * @returns grams of water per 100 g of dry matter, >= 0
 * @throws RangeError when the argument is outside [0, 100); at 100 there is no dry matter to divide by
 * @see identity: 100 m / (100 - m)
 * Checked in tests/domain/moisture/basis.test.ts
 */
export function dryBasisFromFresh(moisturePercent: number): number {
  if (!(moisturePercent >= 0 && moisturePercent < 100)) {
    throw new RangeError(`dryBasisFromFresh: moisturePercent must be in [0, 100), got ${moisturePercent}`);
  }
  return (100 * moisturePercent) / (100 - moisturePercent);
}
