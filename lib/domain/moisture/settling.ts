/**
 * The drying questions of a steward: what will this air bring the seed to, and what air brings it to what I want?
 *
 * Answers of the equilibrium equation (equilibrium.ts) for a crop whose oil is known only as a range. Where the
 * equation is not used the answer says so instead of throwing, because the questions come from a form.
 */

import { dryBasisFromFresh } from './basis';
import {
  equilibriumMoisture,
  MAX_EQUILIBRIUM_RELATIVE_HUMIDITY,
  MAX_EQUILIBRIUM_TEMPERATURE_C,
  MIN_EQUILIBRIUM_TEMPERATURE_C,
  relativeHumidityForMoisture,
} from './equilibrium';

/** Oil of a crop's seed as a range, fractions of dry weight in [0, 0.8], lower <= upper. */
export type OilRange = { lower: number; upper: number };

export type SettlingMoisture =
  | {
      ok: true;
      /** percent of fresh weight at the middle of the oil range */
      moisturePercent: number;
      /** at the oily end of the range */
      lowerPercent: number;
      /** at the lean end */
      upperPercent: number;
    }
  | { ok: false; reason: 'air-too-humid' };

/**
 * Moisture that seed settles at in this air.
 *
 * @param relativeHumidity  of the air, fraction in [0, 1]
 * @param temperatureC      degrees C, in [-60, 80]
 * @param oil               range of the crop's oil; the span of the answer comes from it alone, not from the equation's own error
 * @returns moisture with its span; 'air-too-humid' above a relative humidity of 0.95, where the logarithm runs away
 * @throws RangeError when an argument is outside its range
 * Checked in tests/domain/moisture/settling.test.ts (derived values) and through equilibriumMoisture against R
 */
export function settlingMoisture({
  relativeHumidity,
  temperatureC,
  oil,
}: {
  relativeHumidity: number;
  temperatureC: number;
  oil: OilRange;
}): SettlingMoisture {
  if (!(relativeHumidity >= 0 && relativeHumidity <= 1)) {
    throw new RangeError(`settlingMoisture: relativeHumidity must be in [0, 1], got ${relativeHumidity}`);
  }
  requireOilRange('settlingMoisture', oil);
  if (relativeHumidity > MAX_EQUILIBRIUM_RELATIVE_HUMIDITY) return { ok: false, reason: 'air-too-humid' };
  const at = (oilFraction: number) => equilibriumMoisture({ relativeHumidity, temperatureC, oilFraction });
  return {
    ok: true,
    moisturePercent: at((oil.lower + oil.upper) / 2),
    lowerPercent: at(oil.upper),
    upperPercent: at(oil.lower),
  };
}

/**
 * Relative humidity of the air that brings seed to a wanted moisture.
 *
 * @param moisturePercent  wanted, percent of fresh weight, in [0, 100)
 * @param temperatureC     degrees C, in [-60, 80]
 * @param oilFraction      fraction of dry weight, in [0, 0.8]
 * @returns fraction in [0, 0.95]; 'wetter-than-the-equation-goes' when the answer would be above 0.95
 * @throws RangeError when an argument is outside its range
 * Checked in tests/domain/moisture/settling.test.ts
 */
export function humidityToSettleAt({
  moisturePercent,
  temperatureC,
  oilFraction,
}: {
  moisturePercent: number;
  temperatureC: number;
  oilFraction: number;
}): { ok: true; relativeHumidity: number } | { ok: false; reason: 'wetter-than-the-equation-goes' } {
  const wettest = equilibriumMoisture({
    relativeHumidity: MAX_EQUILIBRIUM_RELATIVE_HUMIDITY,
    temperatureC,
    oilFraction,
  });
  if (moisturePercent > wettest && moisturePercent < 100) return { ok: false, reason: 'wetter-than-the-equation-goes' };
  return { ok: true, relativeHumidity: relativeHumidityForMoisture({ moisturePercent, temperatureC, oilFraction }) };
}

/**
 * Temperature at which air of this humidity brings seed to a wanted moisture: the equation solved for T,
 * T = 90 ((1 - Do) sqrt(-440 ln(1 - R)) / Me - 1.1). The humidity is that AT the temperature: warming a closed
 * room also makes its air drier, which this does not count.
 *
 * @param moisturePercent   wanted, percent of fresh weight, in (0, 100)
 * @param relativeHumidity  fraction in (0, 1]
 * @param oilFraction       fraction of dry weight, in [0, 0.8]
 * @returns degrees C in [-60, 80]; 'air-too-humid' (above 0.95); 'warmer-than-the-equation-goes' when only air above
 *          80 C would dry so far; 'colder-than-the-equation-goes' when the seed settles drier than wanted down to -60 C
 * @throws RangeError when an argument is outside its range
 * @see Cromarty, Ellis & Roberts 1982 (from memory; see equilibrium.ts)
 * Checked against R's uniroot on the equation: tests/golden/moisture-settling.json
 */
export function temperatureToSettleAt({
  moisturePercent,
  relativeHumidity,
  oilFraction,
}: {
  moisturePercent: number;
  relativeHumidity: number;
  oilFraction: number;
}):
  | { ok: true; temperatureC: number }
  | { ok: false; reason: 'air-too-humid' | 'warmer-than-the-equation-goes' | 'colder-than-the-equation-goes' } {
  if (!(moisturePercent > 0 && moisturePercent < 100)) {
    throw new RangeError(`temperatureToSettleAt: moisturePercent must be in (0, 100), got ${moisturePercent}`);
  }
  if (!(relativeHumidity > 0 && relativeHumidity <= 1)) {
    throw new RangeError(`temperatureToSettleAt: relativeHumidity must be in (0, 1], got ${relativeHumidity}`);
  }
  if (relativeHumidity > MAX_EQUILIBRIUM_RELATIVE_HUMIDITY) return { ok: false, reason: 'air-too-humid' };
  // Dry-basis moisture falls as 1 / (1.1 + T/90), so its value at any one temperature gives the whole curve.
  const atTen = dryBasisFromFresh(equilibriumMoisture({ relativeHumidity, temperatureC: 10, oilFraction }));
  const temperatureC = 90 * ((atTen * (1.1 + 10 / 90)) / dryBasisFromFresh(moisturePercent) - 1.1);
  if (temperatureC > MAX_EQUILIBRIUM_TEMPERATURE_C) return { ok: false, reason: 'warmer-than-the-equation-goes' };
  if (temperatureC < MIN_EQUILIBRIUM_TEMPERATURE_C) return { ok: false, reason: 'colder-than-the-equation-goes' };
  return { ok: true, temperatureC };
}

function requireOilRange(caller: string, oil: OilRange): void {
  if (!(oil.lower >= 0 && oil.lower <= oil.upper)) {
    throw new RangeError(`${caller}: oil must run from a lower to an upper fraction, got ${oil.lower} to ${oil.upper}`);
  }
}
