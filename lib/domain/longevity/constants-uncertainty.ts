/**
 * How uncertain a storage life is by the published standard errors of KE and CW alone (delta method; log10 sigma is linear
 * in both, so it is exact for them):
 *
 *   var(log10 sigma) = seKE^2 + x^2 seCW^2 - 2 x r seKE seCW,    x = log10 m
 *
 * The correlation r of the two estimates is not published. In a regression on log10 m over moistures whose logarithms have
 * a mean above 0 it is positive (both rise together), so r = 0 errs on the safe side and r = 1 is the least there can be.
 * Errors of CH and CQ are not published either and come on top.
 */

/** Two-sided 95 % of a normal distribution. */
const PROBITS_OF_95 = 1.959963984540054;

export interface ConstantsUncertainty {
  /** standard errors of log10 of the storage life: least (r = 1) and cautious (r = 0) */
  leastStandardError: number;
  cautiousStandardError: number;
  /** the same as factors: nineteen times in twenty the life lies within this factor, either way; >= 1 */
  leastFactor: number;
  cautiousFactor: number;
}

/**
 * Uncertainty of a storage life from the standard errors of KE and CW.
 *
 * @param standardErrorKE  >= 0, or null where it was not published
 * @param standardErrorCW  >= 0, or null where it was not published
 * @param moisturePercent  percent of fresh weight as put into the equation, 1 to 100: below 1 its logarithm changes sign
 * @returns factors for a 95 % range, or null where either standard error is not known
 * @throws RangeError when an argument is outside its range
 * @see delta method, any statistics text; the sign of r: our own reasoning, above
 * Checked against R (gradient times covariance): tests/golden/storage-life.json
 */
export function constantsUncertainty({
  standardErrorKE,
  standardErrorCW,
  moisturePercent,
}: {
  standardErrorKE: number | null;
  standardErrorCW: number | null;
  moisturePercent: number;
}): ConstantsUncertainty | null {
  if (standardErrorKE === null || standardErrorCW === null) return null;
  requireStandardError('standardErrorKE', standardErrorKE);
  requireStandardError('standardErrorCW', standardErrorCW);
  if (!(moisturePercent >= 1 && moisturePercent < 100)) {
    throw new RangeError(`constantsUncertainty: moisturePercent must be 1 to 100, got ${moisturePercent}`);
  }
  const ofMoisture = Math.log10(moisturePercent) * standardErrorCW;
  const leastStandardError = Math.abs(standardErrorKE - ofMoisture);
  const cautiousStandardError = Math.hypot(standardErrorKE, ofMoisture);
  return {
    leastStandardError,
    cautiousStandardError,
    leastFactor: 10 ** (PROBITS_OF_95 * leastStandardError),
    cautiousFactor: 10 ** (PROBITS_OF_95 * cautiousStandardError),
  };
}

function requireStandardError(name: string, value: number): void {
  if (!(value >= 0 && Number.isFinite(value))) {
    throw new RangeError(`constantsUncertainty: ${name} must be finite and not negative, got ${value}`);
  }
}
