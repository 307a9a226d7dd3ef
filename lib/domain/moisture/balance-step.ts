/** The smallest step of the balance, read off the weights that it gave. */

/** Finer than any bench balance that weighs a tray of seed. */
const MOST_DECIMALS = 4;

/**
 * The step that weights were read to: that of the weight with the most decimals. Where all happen to end in 0 the step
 * is taken too wide, which leaves more open rather than less.
 *
 * @param weightsG  grams, finite
 * @returns grams: 1, 0.1, 0.01, 0.001 or 0.0001; 1 when there are none
 * @throws RangeError when a weight is not finite
 * Checked in tests/domain/moisture/balance-step.test.ts
 */
export function balanceStep(weightsG: readonly number[]): number {
  let decimals = 0;
  for (const weight of weightsG) {
    if (!Number.isFinite(weight)) throw new RangeError(`balanceStep: weights must be finite, got ${weight}`);
    while (decimals < MOST_DECIMALS && Number(weight.toFixed(decimals)) !== Number(weight.toFixed(MOST_DECIMALS))) {
      decimals += 1;
    }
  }
  return Number(`1e-${decimals}`);
}
