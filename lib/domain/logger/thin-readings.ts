/** Readings few enough to draw: in each of so many equal stretches of time the lowest and the highest. */

export interface ThinStretch {
  /** middle of the stretch, seconds since 1970 UTC */
  at: number;
  lowest: number;
  highest: number;
}

/**
 * @param atEpochSeconds  ascending
 * @param values          as many; NaN where there is none
 * @param stretches       how many at most, >= 1
 * @returns a point for each stretch with a value, so that no peak is lost; gaps stay gaps
 * Checked in tests/domain/logger/thin-readings.test.ts
 */
export function thinReadings(atEpochSeconds: Float64Array, values: Float64Array, stretches: number): ThinStretch[] {
  const first = atEpochSeconds[0];
  const last = atEpochSeconds.at(-1);
  if (first === undefined || last === undefined) return [];
  const width = (last - first) / stretches || 1;
  const thin: ThinStretch[] = [];
  let number = -1;
  for (let index = 0; index < values.length; index += 1) {
    const value = values[index] as number;
    if (Number.isNaN(value)) continue;
    const own = Math.min(stretches - 1, Math.floor(((atEpochSeconds[index] as number) - first) / width));
    const point = thin.at(-1);
    if (own === number && point) {
      if (value < point.lowest) point.lowest = value;
      if (value > point.highest) point.highest = value;
    } else {
      number = own;
      thin.push({ at: first + (own + 0.5) * width, lowest: value, highest: value });
    }
  }
  return thin;
}
