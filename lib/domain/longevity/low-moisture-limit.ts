/**
 * The moisture below which drying no longer lengthens a seed's life. Where the constants came with one, that; for other
 * seed the moisture at rest in air of 10.6 % relative humidity at 20 C, worked out from its oil (Ellis, Hong & Roberts 1989).
 */
import { equilibriumMoisture } from '../moisture/equilibrium';
import { type ConstantsRange, LOW_LIMIT_RELATIVE_HUMIDITY } from './equation-limits';

/** The limit is taken at room temperature; limits seen in the cold are higher, and few species were looked at there. */
const LIMIT_TEMPERATURE_C = 20;

interface SeedWithRange {
  constantsRange: ConstantsRange;
  /** oil as a fraction of dry weight, 0-0.8 */
  oilFraction: number;
}

/**
 * The low-moisture limit of a seed.
 *
 * @param seed  its constants' range, with the limit where it is known, and its oil
 * @returns percent of fresh weight
 * @throws RangeError when the oil is outside 0-0.8 and the limit is not known
 * @see Ellis, Hong & Roberts (1989), Ann. Bot. 63:601-611 (the humidity: published; the equilibrium equation: from memory)
 * Checked in tests/domain/longevity/low-moisture-limit.test.ts
 */
export function lowMoistureLimitPercent({ constantsRange, oilFraction }: SeedWithRange): number {
  return (
    constantsRange.lowMoistureLimitPercent ??
    equilibriumMoisture({
      relativeHumidity: LOW_LIMIT_RELATIVE_HUMIDITY,
      temperatureC: LIMIT_TEMPERATURE_C,
      oilFraction,
    })
  );
}

/**
 * The same seed with its low-moisture limit filled in.
 *
 * @param seed  anything with a range of constants and an oil fraction
 * @returns the seed itself where the limit is known, otherwise a copy with it
 * @throws RangeError as `lowMoistureLimitPercent`
 * Checked in tests/domain/longevity/low-moisture-limit.test.ts
 */
export function withLowMoistureLimit<Seed extends SeedWithRange>(seed: Seed): Seed {
  if (seed.constantsRange.lowMoistureLimitPercent !== undefined) return seed;
  return {
    ...seed,
    constantsRange: { ...seed.constantsRange, lowMoistureLimitPercent: lowMoistureLimitPercent(seed) },
  };
}
