import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import { requireProportion } from './require-proportion';

/**
 * Quantile of Student's t: the value below which a share `probability` of it lies.
 *
 * Through the beta distribution: for the tail area q, x = qbeta(2q; df/2, 1/2) and t = sqrt(df (1 - x) / x).
 *
 * @param probability       in (0, 1)
 * @param degreesOfFreedom  > 0, finite
 * @returns t; negative below 0.5. Relative error below 1e-11
 * @throws RangeError when an argument is outside its range
 * Checked against R `qt`: tests/golden/student-t.json
 */
export function studentTQuantile(probability: number, degreesOfFreedom: number): number {
  requireProportion('studentTQuantile', 'probability', probability, true);
  if (!(degreesOfFreedom > 0 && degreesOfFreedom < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`studentTQuantile: degreesOfFreedom must be above 0 and finite, got ${degreesOfFreedom}`);
  }
  if (probability === 0.5) return 0;
  const tail = Math.min(probability, 1 - probability);
  // 1 - x loses its digits as x nears 1 (the middle of the distribution), so there the other beta is asked for 1 - x.
  const x = betaQuantile(2 * tail, degreesOfFreedom / 2, 0.5);
  const t =
    x < 0.5
      ? Math.sqrt((degreesOfFreedom * (1 - x)) / x)
      : ratioRoot(betaQuantile(1 - 2 * tail, 0.5, degreesOfFreedom / 2), degreesOfFreedom);
  return probability < 0.5 ? -t : t;
}

/** sqrt(df y / (1 - y)): t from the complement y = 1 - x. */
function ratioRoot(complement: number, degreesOfFreedom: number): number {
  return Math.sqrt((degreesOfFreedom * complement) / (1 - complement));
}
