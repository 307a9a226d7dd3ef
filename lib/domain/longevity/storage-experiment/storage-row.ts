/**
 * What a storage experiment writes down: seed of one or several lots put away at several moistures and temperatures,
 * and counted from time to time. A row is one count; two dishes of the same seed may be two rows or one.
 */

import type { StorageCondition } from '../viability-equation';

/** One count of a storage experiment. */
export interface StorageRow {
  /** the seed lot, by whatever name; lots differ in how well they began */
  lot: string;
  /** percent of fresh weight, above 0 and below 100; may be null for a count at day 0, on which it has no bearing */
  moisturePercent: number | null;
  /** degrees C, -273.15 to 150; may be null for a count at day 0 */
  temperatureC: number | null;
  /** days since the seed was put away, >= 0; parts of a day are allowed */
  days: number;
  /** seeds set to germinate, integer >= 0; a row without seeds says nothing */
  sown: number;
  /** of these, seeds that germinated, integer from 0 to sown */
  germinated: number;
}

/** The conditions that an experiment covered. */
export interface FittedRange {
  moistureFromPercent: number;
  moistureToPercent: number;
  temperatureFromC: number;
  temperatureToC: number;
  /** the longest storage counted, days */
  longestDays: number;
}

/**
 * Refuses rows that no experiment can have given.
 *
 * @param rows  as typed or read from a file
 * @returns the rows that hold seeds
 * @throws RangeError naming the row (from 1), the argument and the value
 * Checked in tests/domain/longevity/storage-experiment/storage-row.test.ts
 */
export function requireStorageRows(rows: readonly StorageRow[]): StorageRow[] {
  for (const [index, row] of rows.entries()) {
    const refuse = (argument: string, rule: string, value: unknown) => {
      throw new RangeError(`storage experiment, row ${index + 1}: ${argument} must be ${rule}, got ${value}`);
    };
    const { moisturePercent, temperatureC, days, sown, germinated } = row;
    if (!(days >= 0 && days < Number.POSITIVE_INFINITY)) refuse('days', 'a number of at least 0', days);
    if (!Number.isSafeInteger(sown) || sown < 0) refuse('sown', 'a whole number of at least 0', sown);
    if (!Number.isSafeInteger(germinated) || germinated < 0 || germinated > sown) {
      refuse('germinated', `a whole number from 0 to ${sown}`, germinated);
    }
    const mayLack = days === 0;
    if (!(mayLack && moisturePercent === null) && !(Number(moisturePercent) > 0 && Number(moisturePercent) < 100)) {
      refuse('moisturePercent', 'above 0 and below 100', moisturePercent);
    }
    const isTemperature = temperatureC !== null && temperatureC >= -273.15 && temperatureC <= 150;
    if (!(mayLack && temperatureC === null) && !isTemperature) {
      refuse('temperatureC', 'between -273.15 and 150', temperatureC);
    }
  }
  return rows.filter((row) => row.sown > 0);
}

/**
 * The condition of a row, or null where it names none (a count before storage).
 *
 * @param row  a checked count
 * @returns percent of fresh weight and degrees C
 * Checked through conditionsOf: tests/domain/longevity/storage-experiment/storage-row.test.ts
 */
export function conditionOf({ moisturePercent, temperatureC }: StorageRow): StorageCondition | null {
  return moisturePercent === null || temperatureC === null ? null : { moisturePercent, temperatureC };
}

/**
 * Whether a row belongs to a condition.
 *
 * @param row        a checked count
 * @param condition  percent of fresh weight, degrees C
 * @returns true where both figures are the same
 * Checked through fitConditions: tests/domain/longevity/storage-experiment/condition-fits.test.ts
 */
export function isOf(row: StorageRow, condition: StorageCondition): boolean {
  return row.moisturePercent === condition.moisturePercent && row.temperatureC === condition.temperatureC;
}

/**
 * The conditions in which seed was stored for some time, by temperature, then by moisture.
 *
 * @param rows  checked counts
 * @returns each condition once
 * Checked in tests/domain/longevity/storage-experiment/storage-row.test.ts
 */
export function conditionsOf(rows: readonly StorageRow[]): StorageCondition[] {
  const found = new Map<string, StorageCondition>();
  for (const row of rows) {
    const condition = row.days > 0 ? conditionOf(row) : null;
    if (condition) found.set(`${condition.temperatureC} ${condition.moisturePercent}`, condition);
  }
  return [...found.values()].sort((a, b) => a.temperatureC - b.temperatureC || a.moisturePercent - b.moisturePercent);
}

/** The lots, in the order in which they first occur. */
export const lotsOf = (rows: readonly StorageRow[]): string[] => [...new Set(rows.map((row) => row.lot))];

/**
 * The conditions that an experiment covered.
 *
 * @param rows  at least one of them stored for some time
 * @returns the lowest and highest moisture (percent of fresh weight) and temperature (degrees C)
 * @throws RangeError when no seed was stored
 * Checked in tests/domain/longevity/storage-experiment/storage-row.test.ts
 */
export function fittedRangeOf(rows: readonly StorageRow[]): FittedRange {
  const conditions = conditionsOf(rows);
  if (conditions.length === 0) throw new RangeError('fittedRangeOf: rows must hold a count after some storage');
  const moistures = conditions.map((condition) => condition.moisturePercent);
  const temperatures = conditions.map((condition) => condition.temperatureC);
  return {
    moistureFromPercent: Math.min(...moistures),
    moistureToPercent: Math.max(...moistures),
    temperatureFromC: Math.min(...temperatures),
    temperatureToC: Math.max(...temperatures),
    longestDays: rows.reduce((longest, row) => Math.max(longest, row.days), 0),
  };
}
