import { gammaUpperTail } from './gamma-tail';

/**
 * Probability that a chi-square variable exceeds a value: the p-value of a chi-square test.
 *
 * @param chiSquare         statistic, >= 0
 * @param degreesOfFreedom  > 0
 * @returns probability in [0, 1]; relative error below 1e-11, also deep in the tail
 * @throws RangeError when an argument is outside its range
 * Checked against R `pchisq(lower.tail = FALSE)`: tests/golden/chi-square.json
 */
export function chiSquareUpperTail(chiSquare: number, degreesOfFreedom: number): number {
  if (!(chiSquare >= 0)) throw new RangeError(`chiSquareUpperTail: chiSquare must be at least 0, got ${chiSquare}`);
  if (!(degreesOfFreedom > 0 && degreesOfFreedom < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`chiSquareUpperTail: degreesOfFreedom must be above 0, got ${degreesOfFreedom}`);
  }
  if (chiSquare === Number.POSITIVE_INFINITY) return 0;
  return gammaUpperTail(chiSquare / 2, degreesOfFreedom / 2);
}
