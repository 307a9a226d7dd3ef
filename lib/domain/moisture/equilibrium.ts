/**
 * Equilibrium moisture: where seed in open air settles, from the air's relative humidity, its temperature and the
 * seed's oil. Oil takes up no water, so oily seed settles lower.
 *
 * Cromarty's form (Cromarty, Ellis & Roberts 1982, The Design of Seed Storage Facilities):
 *   (1 - R) = exp(-[Me (1.1 + T/90) / (1 - Do)]^2 / 440)
 * R relative humidity 0-1, Me moisture in percent of DRY weight, T temperature C, Do oil as a fraction of dry weight.
 * Status: from memory, not yet checked against the printed page, and its range of validity is not known. Expect a
 * species to differ from it by a point or more. Near R = 1 the logarithm runs away, so nothing is given above 0.95.
 */
import { dryBasisFromFresh, freshBasisFromDry } from './basis';

/** Above this the equation is not used: the logarithm of (1 - R) runs away while real seed simply gets wet. */
export const MAX_EQUILIBRIUM_RELATIVE_HUMIDITY = 0.95;
/** Widest temperatures accepted. Not the (unknown) range of validity: only where 1.1 + T/90 stays well above zero. */
export const MIN_EQUILIBRIUM_TEMPERATURE_C = -60;
export const MAX_EQUILIBRIUM_TEMPERATURE_C = 80;
/** The oiliest seeds known stay below this; above it little is left to hold water and the form says nothing useful. */
export const MAX_OIL_FRACTION = 0.8;

const CURVATURE = 440;

/**
 * Moisture at which seed settles in still air, as percent of fresh weight.
 *
 * @param relativeHumidity  of the air, fraction in [0, 0.95]: write 0.15, not 15
 * @param temperatureC      of air and seed, degrees C, in [-60, 80]
 * @param oilFraction       oil as a fraction of the seed's dry weight, in [0, 0.8]
 * @returns percent of fresh weight, >= 0
 * @throws RangeError when an argument is outside its range
 * @see Cromarty, Ellis & Roberts 1982 (from memory; see the head of this file)
 * Checked against R on a grid and at six derived values: tests/golden/equilibrium-moisture.json
 */
export function equilibriumMoisture({
  relativeHumidity,
  temperatureC,
  oilFraction,
}: {
  relativeHumidity: number;
  temperatureC: number;
  oilFraction: number;
}): number {
  if (!(relativeHumidity >= 0 && relativeHumidity <= MAX_EQUILIBRIUM_RELATIVE_HUMIDITY)) {
    throw new RangeError(
      `equilibriumMoisture: relativeHumidity must be in [0, ${MAX_EQUILIBRIUM_RELATIVE_HUMIDITY}], got ${relativeHumidity}`,
    );
  }
  const slope = dryBasisSlope('equilibriumMoisture', temperatureC, oilFraction);
  // log1p keeps the digits of a small humidity, which 1 - R would round away.
  return freshBasisFromDry(Math.sqrt(-CURVATURE * Math.log1p(-relativeHumidity)) / slope);
}

/**
 * Relative humidity of the air inside a closed container with seed of this moisture: the inverse of equilibriumMoisture.
 *
 * @param moisturePercent  percent of fresh weight, >= 0 and at most the equilibrium at a relative humidity of 0.95
 * @param temperatureC     degrees C, in [-60, 80]
 * @param oilFraction      oil as a fraction of the seed's dry weight, in [0, 0.8]
 * @returns relative humidity, fraction in [0, 0.95]
 * @throws RangeError when an argument is outside its range, and when the seed is so moist that the answer would be
 *         above 0.95, where the equation is not used
 * @see Cromarty, Ellis & Roberts 1982 (from memory; see the head of this file)
 * Checked in tests/domain/moisture/equilibrium.test.ts (undoes equilibriumMoisture) and against R
 */
export function relativeHumidityForMoisture({
  moisturePercent,
  temperatureC,
  oilFraction,
}: {
  moisturePercent: number;
  temperatureC: number;
  oilFraction: number;
}): number {
  const slope = dryBasisSlope('relativeHumidityForMoisture', temperatureC, oilFraction);
  if (!(moisturePercent >= 0 && moisturePercent < 100)) {
    throw new RangeError(`relativeHumidityForMoisture: moisturePercent must be in [0, 100), got ${moisturePercent}`);
  }
  const scaled = dryBasisFromFresh(moisturePercent) * slope;
  const relativeHumidity = -Math.expm1((-scaled * scaled) / CURVATURE);
  // A last-digit excess comes from undoing an exact 0.95, not from wet seed.
  if (relativeHumidity > MAX_EQUILIBRIUM_RELATIVE_HUMIDITY + 1e-12) {
    throw new RangeError(
      `relativeHumidityForMoisture: moisturePercent ${moisturePercent} is in equilibrium with air above a relative humidity of ${MAX_EQUILIBRIUM_RELATIVE_HUMIDITY}, where the equation is not used`,
    );
  }
  return Math.min(relativeHumidity, MAX_EQUILIBRIUM_RELATIVE_HUMIDITY);
}

/** (1.1 + T/90) / (1 - Do): how steeply humidity answers to dry-basis moisture. */
function dryBasisSlope(caller: string, temperatureC: number, oilFraction: number): number {
  if (!(temperatureC >= MIN_EQUILIBRIUM_TEMPERATURE_C && temperatureC <= MAX_EQUILIBRIUM_TEMPERATURE_C)) {
    throw new RangeError(
      `${caller}: temperatureC must be in [${MIN_EQUILIBRIUM_TEMPERATURE_C}, ${MAX_EQUILIBRIUM_TEMPERATURE_C}], got ${temperatureC}`,
    );
  }
  if (!(oilFraction >= 0 && oilFraction <= MAX_OIL_FRACTION)) {
    throw new RangeError(`${caller}: oilFraction must be in [0, ${MAX_OIL_FRACTION}], got ${oilFraction}`);
  }
  return (1.1 + temperatureC / 90) / (1 - oilFraction);
}
