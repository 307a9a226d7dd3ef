import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import {
  EQUATION_AGAINST_TABLE,
  RECALLED_TABLE,
  RECALLED_TABLE_HUMIDITIES,
  recalledMoisture,
} from '../../../lib/domain/moisture/recalled-table';
import { settlingMoisture } from '../../../lib/domain/moisture/settling';
import { factSpan, getCropFacts } from '../../../lib/domain/reference/all-crops';

/** The copy of the facts sheet, which says of itself that every figure is recalled. */
const copied = readFileSync('tests/golden/emc-vegetable-seeds-25C-from-memory.tsv', 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#') && !line.startsWith('crop\t'))
  .map((line) => line.split('\t'))
  .map(([printedAs, ...cells]) => ({ printedAs, moisturePercent: cells.filter((cell) => cell !== '').map(Number) }));

test('the table is the copied one, row by row', () => {
  expect(RECALLED_TABLE.map(({ printedAs, moisturePercent }) => ({ printedAs, moisturePercent }))).toEqual(copied);
  expect(RECALLED_TABLE).toHaveLength(25);
});

test('every row is a crop of the reference, with an oil range', () => {
  for (const { crop } of RECALLED_TABLE) {
    const facts = getCropFacts(crop);
    expect(facts && factSpan(facts, 'oil fraction').ok, crop).toBe(true);
  }
});

test('is read at its columns as printed and between them along a straight line', () => {
  expect(recalledMoisture('Okra', 0.3)).toEqual({ ok: true, moisturePercent: 8.3 });
  const between = recalledMoisture('Okra', 0.15);
  expect(between.ok && between.moisturePercent).toBeCloseTo((3.8 + 7.2) / 2, 12);
});

test('says nothing outside its columns, nor of a crop it has not', () => {
  expect(recalledMoisture('Okra', 0.09)).toEqual({ ok: false, reason: 'outside-the-columns' });
  // Okra's column at 80 % is blank.
  expect(recalledMoisture('Okra', 0.76)).toEqual({ ok: false, reason: 'outside-the-columns' });
  expect(recalledMoisture('Carrot', 0.8).ok).toBe(true);
  expect(recalledMoisture('Barley', 0.3)).toEqual({ ok: false, reason: 'crop-not-in-table' });
  expect(() => recalledMoisture('Okra', 30)).toThrow(/got 30/);
});

/** Equation (at the middle of the crop's oil range) minus table, points of moisture, over every cell. */
function differences(): { crop: string; humidity: number; difference: number }[] {
  return RECALLED_TABLE.flatMap(({ crop, moisturePercent }) =>
    moisturePercent.flatMap((recalled, column) => {
      const relativeHumidity = RECALLED_TABLE_HUMIDITIES[column] ?? Number.NaN;
      const facts = getCropFacts(crop);
      const oil = facts && factSpan(facts, 'oil fraction');
      if (!oil?.ok) return [];
      const equation = settlingMoisture({ relativeHumidity, temperatureC: 25, oil });
      return equation.ok ? [{ crop, humidity: relativeHumidity, difference: equation.moisturePercent - recalled }] : [];
    }),
  );
}

// Both sides are from memory: this measures how far two recollections are apart, which docs/methods/moisture.md prints.
test('the equation stays within the distance from the table that the methods page prints', () => {
  const all = differences();
  const largest = all.reduce((worst, one) => (Math.abs(one.difference) > Math.abs(worst.difference) ? one : worst));
  const typical = Math.sqrt(all.reduce((sum, one) => sum + one.difference ** 2, 0) / all.length);
  expect(all).toHaveLength(166);
  expect(largest).toMatchObject({ crop: 'Beet', humidity: 0.75 });
  expect(Math.abs(largest.difference)).toBeCloseTo(EQUATION_AGAINST_TABLE.largestPoints, 1);
  expect(typical).toBeCloseTo(EQUATION_AGAINST_TABLE.typicalPoints, 1);
  expect(all.reduce((sum, one) => sum + one.difference, 0) / all.length).toBeCloseTo(0.39, 2);
});
