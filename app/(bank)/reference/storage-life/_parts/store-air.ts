import {
  equilibriumMoisture,
  MAX_EQUILIBRIUM_RELATIVE_HUMIDITY,
  MAX_EQUILIBRIUM_TEMPERATURE_C,
  MIN_EQUILIBRIUM_TEMPERATURE_C,
} from '@/lib/domain/moisture/equilibrium';

export interface StoreTarget {
  name: string;
  targetTemperatureC: number;
  targetRelativeHumidity: number | null;
}

/** Moisture at which open seed rests in a store's air, percent of fresh weight; null where its humidity is not known. */
export function moistureInStore(
  { targetTemperatureC, targetRelativeHumidity }: StoreTarget,
  oilFraction: number,
): number | null {
  if (targetRelativeHumidity === null) return null;
  if (targetTemperatureC < MIN_EQUILIBRIUM_TEMPERATURE_C || targetTemperatureC > MAX_EQUILIBRIUM_TEMPERATURE_C)
    return null;
  return equilibriumMoisture({
    relativeHumidity: Math.min(targetRelativeHumidity, MAX_EQUILIBRIUM_RELATIVE_HUMIDITY),
    temperatureC: targetTemperatureC,
    oilFraction,
  });
}
