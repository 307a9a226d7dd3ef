import { describe, expect, test } from 'vitest';
import { type ColumnField, guessColumns } from '../../../lib/domain/spreadsheet/guess-columns';

const FIELDS: ColumnField[] = [
  { key: 'name', label: 'Name', required: true, kind: 'text', synonyms: ['Variety', 'Var'] },
  { key: 'weight', label: 'Clean weight (g)', required: false, kind: 'grams', synonyms: ['Weight', 'Wt'] },
  { key: 'harvested', label: 'Harvested on', required: true, kind: 'date', synonyms: ['Harvest', 'Year'] },
  { key: 'count', label: 'Germinated (seeds)', required: false, kind: 'seeds', synonyms: ['Germinated'] },
  {
    key: 'percent',
    label: 'Germination (%)',
    required: false,
    kind: 'percent',
    synonyms: ['Germination', 'Germinated %'],
  },
];
const guess = (header: string[], ...rows: string[][]) => guessColumns(header, rows, FIELDS);

describe('headings', () => {
  test('case, accents, punctuation and order of columns make no difference', () => {
    const { mapping, confidence } = guess(['HARVEST', 'weight', 'Var.'], ['2019', '12', 'Anna']);
    expect(mapping).toEqual({ name: 2, weight: 1, harvested: 0, count: null, percent: null });
    expect(confidence.name).toBeGreaterThan(0.95);
    expect(confidence.count).toBe(0);
  });
  test('words around a heading leave the guess, with less confidence', () => {
    const { mapping, confidence } = guess(['Name', 'Seed weight dried'], ['Anna', '12']);
    expect(mapping.weight).toBe(1);
    expect(confidence.weight).toBeLessThan(confidence.name ?? 0);
  });
  test('a slip of the pen is forgiven in long words only', () => {
    expect(guess(['Variety'], ['Anna']).mapping.name).toBe(0);
    expect(guess(['Germinatoin'], ['85']).mapping.percent).toBe(0);
    expect(guess(['Vat'], ['Anna']).mapping.name).toBeNull();
  });
  test('an unknown heading is left to the steward and listed', () => {
    const result = guess(['Name', 'Shoe size', ''], ['Anna', '12', 'x']);
    expect(result.unused).toEqual([1]);
  });
});

describe('cells', () => {
  test('decide between two columns with headings that fit as well', () => {
    expect(guess(['Year', 'Harvest'], ['no', '2019'], ['yes', '2020']).mapping.harvested).toBe(1);
    expect(guess(['Harvest', 'Year'], ['2019', 'no'], ['2020', 'yes']).mapping.harvested).toBe(0);
  });
  test('an exact heading with cells that do not fit is kept, with low confidence, so that the problems show', () => {
    const { mapping, confidence } = guess(['Weight'], ['much'], ['little']);
    expect(mapping.weight).toBe(0);
    expect(confidence.weight).toBeLessThan(0.6);
  });
  test('a percent sign in the cells speaks against a count', () => {
    expect(guess(['Germinated'], ['92 %'], ['85 %']).confidence.count).toBeLessThan(0.6);
  });
  test('never make a guess without a heading', () => {
    expect(guess(['A', 'B'], ['2019-12-31', '92 %']).mapping).toEqual({
      name: null,
      weight: null,
      harvested: null,
      count: null,
      percent: null,
    });
  });
});

test('no column is given to two fields', () => {
  const { mapping: one } = guess(['Harvest weight']);
  expect(Object.values(one).filter((column) => column === 0)).toHaveLength(1);
  const { mapping } = guess(['Germinated %', 'Germinated', 'Germination'], ['92', '46', '92']);
  expect(mapping.count).toBe(1);
  expect(mapping.percent).not.toBe(1);
  const given = Object.values(mapping).filter((column) => column !== null);
  expect(new Set(given).size).toBe(given.length);
});
