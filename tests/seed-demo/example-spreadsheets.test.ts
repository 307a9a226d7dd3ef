/** The files of docs/examples are what the import guide uses: they must come in clean after the demo. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { fitStorageExperiment } from '@/lib/domain/longevity/storage-experiment/fit-storage-experiment';
import { CROPS } from '@/lib/domain/reference/all-crops';
import { guessColumns } from '@/lib/domain/spreadsheet/guess-columns';
import { readTable } from '@/lib/domain/spreadsheet/read-table';
import { checkRows } from '@/lib/schemas/import/dry-run';
import { IMPORT_FIELDS, type ImportKind } from '@/lib/schemas/import/fields';
import type { ImportContext } from '@/lib/schemas/import/import-context';
import { problemsInWords } from '@/lib/schemas/storage-experiment/experiment-input';
import { readExperiment } from '@/lib/schemas/storage-experiment/read-experiment';
import { STORES } from '@/seed-demo/scenarios/stores';

const context: ImportContext = {
  today: '2026-11-25',
  accessionNumbers: ['A-0001'],
  lotNumbers: ['L-2012-001'],
  crops: CROPS.map((crop) => ({ name: crop.name, synonyms: [crop.scientificName] })),
  stores: STORES.map((store) => store.name),
};

function dryRun<Kind extends ImportKind>(kind: Kind, file: string, known: Partial<ImportContext> = {}) {
  const table = readTable(readFileSync(path.resolve('docs/examples', file)));
  if (!table.ok) throw new Error(table.reason);
  const rows = table.rows.map((row) => row.cells);
  const { mapping, unused } = guessColumns(table.header, rows, IMPORT_FIELDS[kind]);
  expect(unused, 'every column finds its field').toEqual([]);
  return checkRows(kind, table, mapping, { ...context, ...known });
}

test('three accessions come in, one of them of a crop that is offered to be created', () => {
  const { records, problems, newCrops } = dryRun('accessions', 'accessions.csv');
  expect(problems).toEqual([]);
  expect(records.map((record) => record.number)).toEqual(['TG-01', 'TG-02', 'TG-03']);
  expect(newCrops).toEqual(['Skirret']);
  expect(records[0]?.acquiredOn).toBe('2017-04-14');
});

test('twelve lots come in with decimal commas and days first, one store is offered to be created', () => {
  const { records, problems, newStores } = dryRun('lots', 'lots.csv', {
    accessionNumbers: ['TG-01', 'TG-02', 'TG-03'],
  });
  expect(problems).toEqual([]);
  expect(records).toHaveLength(12);
  expect(newStores).toEqual(['Chapel tin trunk']);
  expect(new Set(records.map((record) => record.store)).size).toBe(3);
  expect(records[1]).toMatchObject({
    number: 'TG-01-20',
    harvestedOn: '2020-09-22',
    isolation: 'cage',
    plantsHarvested: 24,
    cleanWeightG: 11.2,
    thousandSeedWeightG: 1.55,
    moisturePercent: 7.4,
    container: 'glass-jar',
    packedOn: '2020-10-30',
  });
});

test('eight germination tests come in', () => {
  const lotNumbers = dryRun('lots', 'lots.csv', { accessionNumbers: ['TG-01', 'TG-02', 'TG-03'] }).records.map(
    (record) => record.number as string,
  );
  const { records, problems } = dryRun('germination tests', 'germination-tests.csv', { lotNumbers });
  expect(problems).toEqual([]);
  expect(records).toHaveLength(8);
  expect(records[0]).toMatchObject({
    lotNumber: 'TG-01-17',
    setOn: '2019-01-15',
    closedOn: '2019-02-19',
    replicates: [{ seeds: 100, normal: 68, abnormal: 6, hard: 0, fresh: 4, dead: 22 }],
  });
});

test('a leek experiment comes in with semicolons and decimal commas, and gives its constants', () => {
  const read = readExperiment(readFileSync(path.resolve('docs/examples/storage-experiment.csv')));
  if (!read.ok) throw new Error(problemsInWords(read.problems));
  expect(read.rows).toHaveLength(32);
  expect(read.rows[1]).toMatchObject({ lot: 'Skerry Winter 2023', moisturePercent: 5.4, temperatureC: 20, days: 720 });
  expect(fitStorageExperiment(read.rows)).toMatchObject({ ok: true, conditions: 9, goodness: { lacksFit: false } });
});
