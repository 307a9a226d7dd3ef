import { describe, expect, test } from 'vitest';
import { guessColumns } from '../../../lib/domain/spreadsheet/guess-columns';
import { plainWords } from '../../../lib/domain/spreadsheet/plain-words';
import { IMPORT_FIELDS, IMPORT_KINDS, type ImportKind } from '../../../lib/schemas/import/fields';
import { importSchemas } from '../../../lib/schemas/import/records';

/** Guesses headings alone; gives heading -> field key for those that were taken. */
function guessed(kind: ImportKind, ...header: string[]): Record<string, string> {
  const { mapping } = guessColumns(header, [], IMPORT_FIELDS[kind]);
  return Object.fromEntries(
    Object.entries(mapping).flatMap(([key, column]) => (column === null ? [] : [[header[column] ?? '', key]])),
  );
}

describe.each(IMPORT_KINDS)('fields of %s', (kind) => {
  test('each has a schema of the same key, and no schema is without a field', () => {
    const schemas = Object.keys(importSchemas('2026-11-25')[kind].shape).sort();
    expect(IMPORT_FIELDS[kind].map((field) => field.key).sort()).toEqual(schemas);
  });

  test('each schema takes a missing value just when its field is not required', () => {
    const shape: Record<string, { safeParse: (value: unknown) => { success: boolean } }> =
      importSchemas('2026-11-25')[kind].shape;
    for (const field of IMPORT_FIELDS[kind]) {
      expect([field.key, shape[field.key]?.safeParse(undefined).success]).toEqual([field.key, !field.required]);
    }
  });

  test('no heading means two fields', () => {
    const owner = new Map<string, string>();
    for (const field of IMPORT_FIELDS[kind]) {
      for (const heading of new Set([field.label, ...field.synonyms].map(plainWords))) {
        expect([heading, owner.get(heading)]).toEqual([heading, undefined]);
        owner.set(heading, field.key);
      }
    }
  });

  test('each label and synonym finds its own field', () => {
    for (const field of IMPORT_FIELDS[kind]) {
      for (const heading of [field.label, ...field.synonyms]) {
        expect([heading, guessed(kind, heading)]).toEqual([heading, { [heading]: field.key }]);
      }
    }
  });
});

test('headings of a German list of lots', () => {
  expect(
    guessed(
      'lots',
      'Los-Nr.',
      'Akzession',
      'Erntejahr',
      'Gewicht (g)',
      'TKM',
      'Feuchte %',
      'Behälter',
      'Lagerort',
      'Bemerkungen',
    ),
  ).toEqual({
    'Los-Nr.': 'number',
    Akzession: 'accessionNumber',
    Erntejahr: 'harvestedOn',
    'Gewicht (g)': 'cleanWeightG',
    TKM: 'thousandSeedWeightG',
    'Feuchte %': 'moisturePercent',
    Behälter: 'container',
    Lagerort: 'store',
    Bemerkungen: 'notes',
  });
});

test('plain headings of an English list of lots', () => {
  expect(
    guessed('lots', 'Acc No', 'Harvest', 'Wt (g)', '1000 seed wt', 'MC%', 'Jar', 'Location', 'Date packed', 'Treated?'),
  ).toEqual({
    'Acc No': 'accessionNumber',
    Harvest: 'harvestedOn',
    'Wt (g)': 'cleanWeightG',
    '1000 seed wt': 'thousandSeedWeightG',
    'MC%': 'moisturePercent',
    Jar: 'container',
    Location: 'store',
    'Date packed': 'packedOn',
    'Treated?': 'treatment',
  });
});

test('headings of germination tests in four languages', () => {
  expect(guessed('germination tests', 'Lot', 'Date tested', 'No. of seeds', 'Germ %')).toEqual({
    Lot: 'lotNumber',
    'Date tested': 'setOn',
    'No. of seeds': 'seedsSown',
    'Germ %': 'germinationPercent',
  });
  expect(guessed('germination tests', 'Los', 'Datum', 'Samen', 'Keimfähigkeit')).toMatchObject({
    Keimfähigkeit: 'germinationPercent',
  });
  expect(guessed('germination tests', 'Lot', 'Date du test', 'Graines semées', 'Taux de germination')).toMatchObject({
    'Taux de germination': 'germinationPercent',
  });
  expect(guessed('germination tests', 'Lote', 'Fecha', 'Semillas', 'Germinadas')).toMatchObject({
    Germinadas: 'germinated',
  });
});

test('headings of a list of accessions in four languages', () => {
  expect(guessed('accessions', 'Acc. No.', 'Variety', 'Crop', 'Donor', 'Year received')).toEqual({
    'Acc. No.': 'number',
    Variety: 'name',
    Crop: 'crop',
    Donor: 'donor',
    'Year received': 'acquiredOn',
  });
  expect(guessed('accessions', 'Nr.', 'Sorte', 'Kultur', 'Herkunft')).toEqual({
    'Nr.': 'number',
    Sorte: 'name',
    Kultur: 'crop',
    Herkunft: 'origin',
  });
  expect(guessed('accessions', 'Numéro', 'Variété', 'Espèce')).toEqual({
    Numéro: 'number',
    Variété: 'name',
    Espèce: 'crop',
  });
  expect(guessed('accessions', 'Número', 'Variedad', 'Cultivo')).toEqual({
    Número: 'number',
    Variedad: 'name',
    Cultivo: 'crop',
  });
});
