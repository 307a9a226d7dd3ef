/**
 * The seed viability equation: how many days a seed lot of a species takes to lose one probit of viability
 * at one moisture and temperature.
 *
 *   v = Ki - p / sigma,    log10 sigma = KE - CW log10(m) - CH t - CQ t^2
 *
 * v and Ki are probits (0 is 50 %), p is days in store, m is percent of fresh weight, t is degrees C.
 * This is the bare equation: it answers outside its range too. Whether it may be used is the business of
 * `equation-limits.ts`.
 */

/** A species' four constants. CH is per degree C, CQ per degree C squared; sigma comes out in days. */
export type LongevityConstants = { KE: number; CW: number; CH: number; CQ: number };

export type StorageCondition = {
  /** percent of fresh weight, above 0 and below 100 */
  moisturePercent: number;
  /** degrees C, -273.15 to 150 */
  temperatureC: number;
};

/**
 * Days of storage in which a lot loses one probit of viability.
 *
 * @param constants        the species' KE, CW, CH, CQ; finite
 * @param moisturePercent  percent of fresh weight, 0 < m < 100
 * @param temperatureC     degrees C, -273.15 to 150
 * @returns days per probit, > 0; Infinity only where the number is too large to hold
 * @throws RangeError when an argument is outside the range above
 * @see Ellis & Roberts (1980), Ann. Bot. 45:13-30 (form: from memory)
 * Checked against 114 values derived in R: tests/golden/viability-check-values.tsv; and to 1e-12 against R: tests/golden/viability-equation.json
 */
export function sigmaDays(constants: LongevityConstants, { moisturePercent, temperatureC }: StorageCondition): number {
  // One power for both halves: a store's readings ask for it by the hundred thousand.
  return 10 ** (moistureExponent(constants, moisturePercent) - temperatureExponent(constants, temperatureC));
}

/**
 * The moisture half of the equation: 10^(KE - CW log10 m). Sigma is this divided by the temperature half.
 * Kept apart because a sealed packet's moisture stays put while its store's temperature moves.
 *
 * @param constants        the species' constants; finite
 * @param moisturePercent  percent of fresh weight, 0 < m < 100
 * @returns days per probit at 0 degrees C
 * @throws RangeError when the moisture is outside 0-100 or a constant is not finite
 * Checked by the values of `sigmaDays` and by the factorisation law in tests/domain/longevity/viability-equation.test.ts
 */
export function moistureFactorDays(constants: { KE: number; CW: number }, moisturePercent: number): number {
  return 10 ** moistureExponent(constants, moisturePercent);
}

function moistureExponent({ KE, CW }: { KE: number; CW: number }, moisturePercent: number): number {
  if (!Number.isFinite(KE)) throw new RangeError(`moistureFactorDays: KE must be finite, got ${KE}`);
  if (!Number.isFinite(CW)) throw new RangeError(`moistureFactorDays: CW must be finite, got ${CW}`);
  if (!(moisturePercent > 0 && moisturePercent < 100)) {
    throw new RangeError(`moistureFactorDays: moisturePercent must be above 0 and below 100, got ${moisturePercent}`);
  }
  return KE - CW * Math.log10(moisturePercent);
}

/**
 * The temperature half of the equation: 10^(CH t + CQ t^2), how many times faster seed ages at t than at 0 C.
 *
 * @param CH            per degree C; finite
 * @param CQ            per degree C squared; finite
 * @param temperatureC  degrees C, -273.15 to 150
 * @returns a plain factor, > 0; 1 at 0 C
 * @throws RangeError when an argument is outside the range above
 * Checked by the values of `sigmaDays` and by the factorisation law in tests/domain/longevity/viability-equation.test.ts
 */
export function temperatureFactor(constants: { CH: number; CQ: number }, temperatureC: number): number {
  return 10 ** temperatureExponent(constants, temperatureC);
}

function temperatureExponent({ CH, CQ }: { CH: number; CQ: number }, temperatureC: number): number {
  if (!Number.isFinite(CH)) throw new RangeError(`temperatureFactor: CH must be finite, got ${CH}`);
  if (!Number.isFinite(CQ)) throw new RangeError(`temperatureFactor: CQ must be finite, got ${CQ}`);
  if (!(temperatureC >= -273.15 && temperatureC <= 150)) {
    throw new RangeError(`temperatureFactor: temperatureC must be between -273.15 and 150, got ${temperatureC}`);
  }
  return CH * temperatureC + CQ * temperatureC * temperatureC;
}
