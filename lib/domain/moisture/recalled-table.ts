/**
 * Equilibrium moisture of vegetable seed at about 25 C, as a table recalled it: a second opinion beside the equation.
 *
 * All figures are FROM MEMORY, said to be Harrington 1960, reprinted in Justice & Bass 1978 (USDA Agriculture Handbook
 * 506), which could not be read. Percent of fresh weight. The equation is nowhere fitted to it.
 */

export const RECALLED_TABLE_TEMPERATURE_C = 25;

/** Relative humidities of the columns, fractions. The last column is blank for nine crops. */
export const RECALLED_TABLE_HUMIDITIES = [0.1, 0.2, 0.3, 0.45, 0.6, 0.75, 0.8] as const;

/**
 * How far the equation lies from the table over its 166 cells, in points of moisture: root mean square, and the largest
 * (beet at 75 %). Two recollections compared, so neither is proved; it says how far to trust a figure of either.
 * Measured in tests/domain/moisture/recalled-table.test.ts
 */
export const EQUATION_AGAINST_TABLE = { typicalPoints: 0.94, largestPoints: 3.1 } as const;

/** Rows: the crop as the reference knows it, and moisture at each humidity. */
export const RECALLED_TABLE: readonly { crop: string; printedAs: string; moisturePercent: readonly number[] }[] = [
  { crop: 'Broad bean', printedAs: 'Bean, broad', moisturePercent: [4.2, 5.8, 7.2, 9.3, 11.1, 14.5, 17.2] },
  { crop: 'Lima bean', printedAs: 'Bean, lima', moisturePercent: [4.6, 6.6, 7.7, 9.2, 11.0, 13.8, 15.0] },
  { crop: 'Common bean', printedAs: 'Bean, snap', moisturePercent: [3.0, 4.8, 6.8, 9.4, 12.0, 15.0, 16.0] },
  { crop: 'Beet', printedAs: 'Beet, garden', moisturePercent: [2.1, 4.0, 5.8, 7.6, 9.4, 11.2] },
  { crop: 'Cabbage', printedAs: 'Cabbage', moisturePercent: [3.2, 4.6, 5.4, 6.4, 7.6, 9.6, 10.0] },
  { crop: 'Chinese cabbage', printedAs: 'Cabbage, Chinese', moisturePercent: [2.4, 3.4, 4.6, 6.3, 7.8, 9.4] },
  { crop: 'Carrot', printedAs: 'Carrot', moisturePercent: [4.5, 5.9, 6.8, 7.9, 9.2, 11.6, 12.5] },
  { crop: 'Celery', printedAs: 'Celery', moisturePercent: [5.8, 7.0, 7.8, 9.0, 10.4, 12.4, 13.5] },
  { crop: 'Sweet corn', printedAs: 'Corn, sweet', moisturePercent: [3.8, 5.8, 7.0, 9.0, 10.6, 12.8, 14.0] },
  { crop: 'Cucumber', printedAs: 'Cucumber', moisturePercent: [2.6, 4.3, 5.6, 7.1, 8.4, 10.1, 10.4] },
  { crop: 'Aubergine', printedAs: 'Eggplant', moisturePercent: [3.1, 4.9, 6.3, 8.0, 9.8, 11.9] },
  { crop: 'Lettuce', printedAs: 'Lettuce', moisturePercent: [2.8, 4.2, 5.1, 5.9, 7.1, 9.6, 10.0] },
  { crop: 'Mustard', printedAs: 'Mustard, leaf', moisturePercent: [1.8, 3.2, 4.6, 6.3, 7.8, 9.4] },
  { crop: 'Okra', printedAs: 'Okra', moisturePercent: [3.8, 7.2, 8.3, 10.0, 11.2, 13.1] },
  { crop: 'Onion', printedAs: 'Onion', moisturePercent: [4.6, 6.8, 8.0, 9.5, 11.2, 13.4, 13.6] },
  { crop: 'Welsh onion', printedAs: 'Onion, Welsh', moisturePercent: [3.4, 5.1, 6.9, 9.4, 11.8, 14.0] },
  { crop: 'Parsnip', printedAs: 'Parsnip', moisturePercent: [5.0, 6.1, 7.0, 8.2, 9.5, 11.2] },
  { crop: 'Pea', printedAs: 'Pea', moisturePercent: [5.4, 7.3, 8.6, 10.1, 11.9, 15.0, 15.5] },
  { crop: 'Pepper', printedAs: 'Pepper', moisturePercent: [2.8, 4.5, 6.0, 7.8, 9.2, 11.0, 12.0] },
  { crop: 'Radish', printedAs: 'Radish', moisturePercent: [2.6, 3.8, 5.1, 6.8, 8.3, 10.2] },
  { crop: 'Spinach', printedAs: 'Spinach', moisturePercent: [4.6, 6.5, 7.8, 9.5, 11.1, 13.2, 14.5] },
  { crop: 'Squash', printedAs: 'Squash, winter', moisturePercent: [3.0, 4.3, 5.6, 7.4, 9.0, 10.8] },
  { crop: 'Tomato', printedAs: 'Tomato', moisturePercent: [3.2, 5.0, 6.3, 7.8, 9.2, 11.1, 12.0] },
  { crop: 'Turnip', printedAs: 'Turnip', moisturePercent: [2.6, 4.0, 5.1, 6.3, 7.4, 9.0, 10.0] },
  { crop: 'Watermelon', printedAs: 'Watermelon', moisturePercent: [3.0, 4.8, 6.1, 7.6, 8.8, 10.4, 11.0] },
];

/**
 * What the recalled table says of a crop at a humidity, read between its columns along a straight line.
 *
 * @param crop              name as in CROPS
 * @param relativeHumidity  fraction in [0, 1]
 * @returns percent of fresh weight at about 25 C; 'crop-not-in-table', or 'outside-the-columns' below 10 % and above
 *          the last column that the crop has (75 or 80 %)
 * @throws RangeError when the humidity is outside [0, 1]
 * Checked in tests/domain/moisture/recalled-table.test.ts, row by row against the copied table
 */
export function recalledMoisture(
  crop: string,
  relativeHumidity: number,
): { ok: true; moisturePercent: number } | { ok: false; reason: 'crop-not-in-table' | 'outside-the-columns' } {
  if (!(relativeHumidity >= 0 && relativeHumidity <= 1)) {
    throw new RangeError(`recalledMoisture: relativeHumidity must be in [0, 1], got ${relativeHumidity}`);
  }
  const row = RECALLED_TABLE.find((candidate) => candidate.crop === crop);
  if (row === undefined) return { ok: false, reason: 'crop-not-in-table' };
  for (let column = 1; column < row.moisturePercent.length; column++) {
    const [left, right] = [RECALLED_TABLE_HUMIDITIES[column - 1], RECALLED_TABLE_HUMIDITIES[column]];
    const [low, high] = [row.moisturePercent[column - 1], row.moisturePercent[column]];
    if (left === undefined || right === undefined || low === undefined || high === undefined) break;
    if (relativeHumidity >= left && relativeHumidity <= right) {
      return { ok: true, moisturePercent: low + ((high - low) * (relativeHumidity - left)) / (right - left) };
    }
  }
  return { ok: false, reason: 'outside-the-columns' };
}
