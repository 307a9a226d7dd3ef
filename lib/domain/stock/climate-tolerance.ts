/**
 * How far a store may stray from its target before a page counts it as outside. Status: our own choice. A freezer that
 * defrosts by itself and a fridge whose compressor comes and goes swing by a degree or two without harm; a room swings
 * more with the weather than a cabinet does.
 */

export interface ClimateTolerance {
  /** degrees C, either way */
  temperatureC: number;
  /** relative humidity 0-1, either way */
  relativeHumidity: number;
}

const BY_KIND: Readonly<Record<string, ClimateTolerance>> = {
  freezer: { temperatureC: 3, relativeHumidity: 0.1 },
  fridge: { temperatureC: 2, relativeHumidity: 0.1 },
  cabinet: { temperatureC: 2, relativeHumidity: 0.05 },
  room: { temperatureC: 3, relativeHumidity: 0.1 },
};
const OF_ANY: ClimateTolerance = { temperatureC: 3, relativeHumidity: 0.1 };

/**
 * @param kinds  the store's kind, then those of the stores around it, from within
 * @returns the tolerance of the first that makes a climate of its own: a shelf or box is as steady as what it stands in
 * Checked in tests/domain/stock/climate-tolerance.test.ts
 */
export function usualTolerance(kinds: readonly string[]): ClimateTolerance {
  const kind = kinds.find((candidate) => Object.hasOwn(BY_KIND, candidate));
  return (kind === undefined ? undefined : BY_KIND[kind]) ?? OF_ANY;
}
