import type { TemperatureRegime } from './crop-facts';

/** Parsers for figures as growers' tables print them. Exact factors: international foot and mile. */
export const METRES_PER_FOOT = 0.3048;
export const METRES_PER_MILE = 1609.344;

/** A range in some unit; `lower` equals `upper` when the table prints one figure. */
export type PrintedRange = { lower: number; upper: number };

const NUMBER = String.raw`\d[\d,]*(?:\.\d+)?(?:/\d+)?`;
const DISTANCE = new RegExp(`^(${NUMBER})\\s*(ft|mi)?(?:-(${NUMBER})\\s*(ft|mi))?(?![\\w/])`);

function printedNumber(text: string): number {
  const [numerator, denominator] = text.replaceAll(',', '').split('/').map(Number);
  return denominator === undefined ? (numerator as number) : (numerator as number) / denominator;
}

function centimetresKept(metres: number): number {
  return Math.round(metres * 100) / 100;
}

/**
 * Feet to metres, kept to the centimetre.
 *
 * @param feet finite, >= 0
 * @returns metres
 * @throws RangeError when feet is negative or not finite
 * Checked against the metric columns of 7 CFR 201.76: tests/domain/reference/published-tables.test.ts
 */
export function metresFromFeet(feet: number): number {
  if (!(feet >= 0 && Number.isFinite(feet))) throw new RangeError(`metresFromFeet: feet ${feet} must be >= 0`);
  return centimetresKept(feet * METRES_PER_FOOT);
}

/**
 * Miles to metres, kept to the centimetre.
 *
 * @param miles finite, >= 0
 * @returns metres
 * @throws RangeError when miles is negative or not finite
 * Checked in tests/domain/reference/parse-printed.test.ts (international mile)
 */
export function metresFromMiles(miles: number): number {
  if (!(miles >= 0 && Number.isFinite(miles))) throw new RangeError(`metresFromMiles: miles ${miles} must be >= 0`);
  return centimetresKept(miles * METRES_PER_MILE);
}

/**
 * A printed figure or range without a unit: '4', '2-3', '6-13', '10-25 (note)'.
 *
 * @param printed text that starts with the figure; what follows the figure is ignored
 * @returns the range in the unit of the table
 * @throws RangeError when the text does not start with a figure or the range runs backwards
 * Checked in tests/domain/reference/parse-printed.test.ts
 */
export function rangeFromPrinted(printed: string): PrintedRange {
  const found = new RegExp(`^(${NUMBER})(?:-(${NUMBER}))?(?![\\w/-])`).exec(printed.trim());
  if (!found) throw new RangeError(`rangeFromPrinted: no figure at the start of "${printed}"`);
  const lower = printedNumber(found[1] as string);
  const upper = found[2] === undefined ? lower : printedNumber(found[2]);
  if (upper < lower) throw new RangeError(`rangeFromPrinted: "${printed}" runs backwards`);
  return { lower, upper };
}

/**
 * A printed distance: '20 ft', '1/2 mi', '1/2-5 mi', '150 ft-1/2 mi', '600-1,300 ft'. A figure without its own
 * unit takes the unit that ends the range.
 *
 * @param printed text that starts with the distance; what follows it is ignored
 * @returns the range in metres
 * @throws RangeError when no distance in feet or miles is found, or the range runs backwards
 * Checked in tests/domain/reference/parse-printed.test.ts
 */
export function metresFromPrinted(printed: string): PrintedRange {
  const found = DISTANCE.exec(printed.trim());
  const lastUnit = found?.[4] ?? found?.[2];
  if (!found || lastUnit === undefined) throw new RangeError(`metresFromPrinted: no distance in "${printed}"`);
  const toMetres = (figure: string, unit: string) =>
    unit === 'ft' ? metresFromFeet(printedNumber(figure)) : metresFromMiles(printedNumber(figure));
  const lower = toMetres(found[1] as string, found[2] ?? lastUnit);
  const upper = found[3] === undefined ? lower : toMetres(found[3], lastUnit);
  if (upper < lower) throw new RangeError(`metresFromPrinted: "${printed}" runs backwards`);
  return { lower, upper };
}

/**
 * Printed germination temperatures: '20' constant; '20-30' first figure about 16 hours, second about 8 hours;
 * after a semicolon, the alternate regime (7 CFR 201.58(a)(8)).
 *
 * @param printed degrees C as printed
 * @returns regimes in the printed order: at least one
 * @throws RangeError when a part is not one or two figures
 * Checked in tests/domain/reference/parse-printed.test.ts
 */
export function temperaturesFromPrinted(printed: string): TemperatureRegime[] {
  return printed.split(';').map((part) => {
    const found = /^(\d+(?:\.\d+)?)(?:-(\d+(?:\.\d+)?))?$/.exec(part.trim());
    if (!found) throw new RangeError(`temperaturesFromPrinted: "${part}" is not a temperature`);
    return found[2] === undefined
      ? { dayC: Number(found[1]), nightC: null }
      : { dayC: Number(found[2]), nightC: Number(found[1]) };
  });
}

/**
 * Rows of a tab-separated table with a header line; lines that start with '#' are remarks.
 *
 * @param text whole file
 * @returns one record per row, keyed by the header; a missing last cell is ''
 * @throws RangeError when there is no header line
 * Checked in tests/domain/reference/parse-printed.test.ts
 */
export function rowsFromTable(text: string): Record<string, string>[] {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== '' && !line.startsWith('#'));
  const header = lines[0]?.split('\t');
  if (!header) throw new RangeError('rowsFromTable: text has no header line');
  return lines.slice(1).map((line) => {
    const cells = line.split('\t');
    return Object.fromEntries(header.map((name, column) => [name, cells[column] ?? '']));
  });
}
