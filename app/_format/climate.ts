import { formatDate, formatTemperature } from './figures';

/** What a store is meant to be: '−18 °C', '4 °C, 35 % humidity'. */
export function targetInWords(store: { targetTemperatureC: number; targetRelativeHumidity: number | null }): string {
  const temperature = formatTemperature(store.targetTemperatureC);
  if (store.targetRelativeHumidity === null) return temperature;
  return `${temperature}, ${Math.round(store.targetRelativeHumidity * 100)} % humidity`;
}

/** The last week that was logged: '3.1 °C to 5.4 °C, week to 2 Mar 2026'. */
export function readingsInWords(
  readings: { lastAtEpochSeconds: number; coldestC: number; warmestC: number } | null,
): string {
  if (!readings) return 'no readings yet';
  const day = new Date(readings.lastAtEpochSeconds * 1000).toISOString().slice(0, 10);
  return `${formatTemperature(readings.coldestC)} to ${formatTemperature(readings.warmestC)}, week to ${formatDate(day)}`;
}
