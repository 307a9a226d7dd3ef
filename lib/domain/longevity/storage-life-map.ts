/**
 * Storage life over moisture and temperature, as a picture and a table show it: cells with the zones in which they are not
 * to be trusted, and the zones as rectangles. The lines of equal life are `life-contours.ts`.
 */
import { HIGH_MOISTURE_LIMIT_PERCENT, SAFE_FREEZING_MOISTURE_PERCENT } from './equation-limits';
import { lowMoistureLimitPercent } from './low-moisture-limit';
import type { SeedKind } from './seed-kind';
import { storageLife, type ViabilityFall } from './storage-life';
import type { StorageCondition } from './viability-equation';

/** Why a stretch of the map is not to be taken as it stands. */
export type MapZone = 'drying gains nothing' | 'too moist' | 'freezing may kill' | 'outside the fitted range';

export interface MapBounds {
  moistureFromPercent: number;
  moistureToPercent: number;
  temperatureFromC: number;
  temperatureToC: number;
}

export interface MapCell extends StorageCondition {
  /** null where the equation gives no forecast */
  days: number | null;
  zones: MapZone[];
}

/**
 * Storage life on a net of moistures and temperatures.
 *
 * @param seed          constants with their range, storage behaviour and oil
 * @param fall          proportions in (0, 1), wanted <= initial
 * @param moistures     percent of fresh weight, each 0 < m < 100
 * @param temperatures  degrees C, each -273.15 to 150
 * @returns a row for each temperature with a cell for each moisture
 * @throws RangeError when an argument is outside its range
 * Checked against `storageLife` and at every zone's edge in tests/domain/longevity/storage-life-map.test.ts
 */
export function storageLifeCells(
  seed: SeedKind,
  fall: ViabilityFall,
  { moistures, temperatures }: { moistures: readonly number[]; temperatures: readonly number[] },
): MapCell[][] {
  return temperatures.map((temperatureC) =>
    moistures.map((moisturePercent) => {
      const condition = { moisturePercent, temperatureC };
      const life = storageLife(seed, condition, fall);
      return { ...condition, days: life.ok ? life.days : null, zones: zonesAt(seed, condition) };
    }),
  );
}

/**
 * The zones in which a condition lies. A range that is not known puts nothing outside it: that is said in words, not drawn.
 *
 * @param seed       constants with their range and oil
 * @param condition  percent of fresh weight and degrees C
 * @returns the zones, none where the equation may be taken as it stands
 * @throws RangeError when the oil is outside 0-0.8
 * Checked at both sides of every edge in tests/domain/longevity/storage-life-map.test.ts
 */
export function zonesAt(seed: SeedKind, { moisturePercent, temperatureC }: StorageCondition): MapZone[] {
  const range = seed.constantsRange;
  const zones: MapZone[] = [];
  if (moisturePercent < lowMoistureLimitPercent(seed)) zones.push('drying gains nothing');
  if (moisturePercent > HIGH_MOISTURE_LIMIT_PERCENT) zones.push('too moist');
  if (moisturePercent > SAFE_FREEZING_MOISTURE_PERCENT && temperatureC < 0) zones.push('freezing may kill');
  const used = Math.max(moisturePercent, lowMoistureLimitPercent(seed));
  const outsideMoisture = used < (range.moistureFromPercent ?? 0) || used > (range.moistureToPercent ?? 100);
  const outsideTemperature =
    temperatureC < (range.temperatureFromC ?? Number.NEGATIVE_INFINITY) ||
    temperatureC > (range.temperatureToC ?? Number.POSITIVE_INFINITY);
  if (outsideMoisture || outsideTemperature) zones.push('outside the fitted range');
  return zones;
}

/**
 * The same zones as rectangles within a map, in data units.
 *
 * @param seed    constants with their range and oil
 * @param bounds  the map's edges, percent of fresh weight and degrees C
 * @returns rectangles, each with its zone; those of one zone do not overlap, those of different zones may
 * @throws RangeError when the oil is outside 0-0.8
 * Checked against `zonesAt` all over the map in tests/domain/longevity/storage-life-map.test.ts
 */
export function mapZones(seed: SeedKind, bounds: MapBounds): (MapBounds & { zone: MapZone })[] {
  const range = seed.constantsRange;
  const dry = lowMoistureLimitPercent(seed);
  // Below the low limit moisture is reckoned at the limit, so a range that begins above it takes in all drier seed.
  const from = range.moistureFromPercent ?? 0;
  const fittedFrom = from > dry ? from : 0;
  const fittedTo = range.moistureToPercent ?? 100;
  const coldest = range.temperatureFromC ?? Number.NEGATIVE_INFINITY;
  const warmest = range.temperatureToC ?? Number.POSITIVE_INFINITY;
  const fittedRows = { temperatureFromC: coldest, temperatureToC: warmest };
  const zones: (Partial<MapBounds> & { zone: MapZone })[] = [
    { zone: 'outside the fitted range', temperatureToC: coldest },
    { zone: 'outside the fitted range', temperatureFromC: warmest },
    { zone: 'outside the fitted range', ...fittedRows, moistureToPercent: fittedFrom },
    { zone: 'outside the fitted range', ...fittedRows, moistureFromPercent: fittedTo },
    { zone: 'drying gains nothing', moistureToPercent: dry },
    { zone: 'freezing may kill', moistureFromPercent: SAFE_FREEZING_MOISTURE_PERCENT, temperatureToC: 0 },
    { zone: 'too moist', moistureFromPercent: HIGH_MOISTURE_LIMIT_PERCENT },
  ];
  return zones.map((zone) => within(bounds, zone)).filter(isNotEmpty);
}

function within(bounds: MapBounds, part: Partial<MapBounds> & { zone: MapZone }): MapBounds & { zone: MapZone } {
  return {
    zone: part.zone,
    moistureFromPercent: Math.max(bounds.moistureFromPercent, part.moistureFromPercent ?? 0),
    moistureToPercent: Math.min(bounds.moistureToPercent, part.moistureToPercent ?? 100),
    temperatureFromC: Math.max(bounds.temperatureFromC, part.temperatureFromC ?? Number.NEGATIVE_INFINITY),
    temperatureToC: Math.min(bounds.temperatureToC, part.temperatureToC ?? Number.POSITIVE_INFINITY),
  };
}

const isNotEmpty = (part: MapBounds): boolean =>
  part.moistureToPercent > part.moistureFromPercent && part.temperatureToC > part.temperatureFromC;
