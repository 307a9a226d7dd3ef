/** The smallest step of the balance, read off the weights that it gave. */
import { readabilityG } from '../stock/spread-of-amount';

/**
 * The step that weights were read to: that of the weight with the most decimals. Where all happen to end in 0 the step
 * is taken too wide, which leaves more open rather than less.
 *
 * @param weightsG  grams as read, finite
 * @returns grams: 1, 0.1, 0.01 and so on to 0.00001; 1 when there are none
 * @throws RangeError when a weight is not finite
 * Checked in tests/domain/moisture/balance-step.test.ts
 */
export function balanceStep(weightsG: readonly number[]): number {
  return weightsG.reduce((step, weight) => {
    if (!Number.isFinite(weight)) throw new RangeError(`balanceStep: weights must be finite, got ${weight}`);
    return Math.min(step, readabilityG(weight));
  }, 1);
}
