/**
 * Ageing: probits of viability lost over a storage history. The viability equation is linear in time, so the
 * losses of successive periods add, whatever their order. (That is an assumption of the equation, not a law of
 * seeds: see docs/methods/viability-equation.md.)
 */
import { type LongevityConstants, sigmaDays } from './viability-equation';

/** A stretch of storage at one temperature and moisture. */
export type StoragePeriod = {
  /** length, days, >= 0; need not be whole */
  days: number;
  /** degrees C */
  temperatureC: number;
  /** percent of fresh weight */
  moisturePercent: number;
};

/**
 * Probits of viability that the published equation says were lost over a storage history.
 *
 * @param constants  the species' KE, CW, CH, CQ
 * @param periods    stretches of storage; none, or stretches of zero days, lose nothing
 * @returns probits, >= 0; additive over periods
 * @throws RangeError when a period's days are negative or not finite, or its moisture or temperature cannot be
 * @see Ellis & Roberts (1980), Ann. Bot. 45:13-30 (form: from memory)
 * Checked in tests/domain/longevity/ageing.test.ts
 */
export function ageingProbits(constants: LongevityConstants, periods: readonly StoragePeriod[]): number {
  let probits = 0;
  for (const period of periods) {
    if (!(period.days >= 0 && Number.isFinite(period.days))) {
      throw new RangeError(`ageingProbits: days must be finite and not negative, got ${period.days}`);
    }
    probits += period.days / sigmaDays(constants, period);
  }
  return probits;
}
