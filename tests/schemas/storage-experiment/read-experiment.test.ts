import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { StorageRow } from '@/lib/domain/longevity/storage-experiment/storage-row';
import { problemsInWords } from '@/lib/schemas/storage-experiment/experiment-input';
import { MAX_EXPERIMENT_ROWS, readExperiment, writeExperiment } from '@/lib/schemas/storage-experiment/read-experiment';

function rowsOf(source: string | Uint8Array): StorageRow[] {
  const read = readExperiment(source);
  if (!read.ok) throw new Error(problemsInWords(read.problems));
  return read.rows;
}
function problemsOf(source: string): string[] {
  const read = readExperiment(source);
  if (read.ok) throw new Error('expected problems');
  return problemsInWords(read.problems).split('\n');
}

const ROW = { lot: 'A', moisturePercent: 8.5, temperatureC: 20, days: 30, sown: 50, germinated: 46 };

describe('reads what a bench keeps', () => {
  test('pasted from a spreadsheet, with decimal commas', () => {
    expect(rowsOf('Lot\tMoisture\tTemperature\tDays\tSown\tGerminated\nA\t8,5\t20\t30\t50\t46')).toEqual([ROW]);
  });
  test('a file with semicolons, other words and a byte order mark', () => {
    const file = '\ufeffPartie;Feuchte %;Temperatur;Tage;Samen;Gekeimt\r\nA;8,5;20;30;50;46\r\n';
    expect(rowsOf(new TextEncoder().encode(file))).toEqual([ROW]);
  });
  test('columns in any order, with others between', () => {
    expect(rowsOf('germinated,shelf,sown,days,temp,mc,lot\n46,3,50,30,20,8.5,A')).toEqual([ROW]);
  });
  test('moisture kept as proportions by a spreadsheet program', () => {
    const text =
      'lot,moisture,temperature,days,sown,germinated\nA,0.085,20,30,50,46\nA,0.12,20,30,50,40\nA,0.05,20,30,50,48';
    expect(rowsOf(text).map((row) => row.moisturePercent)).toEqual([8.5, 12, 5]);
  });
  test('counts before storage without moisture and temperature', () => {
    const text = 'lot,moisture,temperature,days,sown,germinated\nA,,,0,50,49\nA,8.5,20,30,50,46';
    expect(rowsOf(text)).toEqual([
      { ...ROW, ...{ moisturePercent: null, temperatureC: null, days: 0, germinated: 49 } },
      ROW,
    ]);
  });
  test('cold stores below zero', () => {
    expect(rowsOf('moisture,temperature,days,sown,germinated\n5,−18,400,50,48')[0]?.temperatureC).toBe(-18);
  });
  test('one lot that nobody named, and says so', () => {
    const read = readExperiment('moisture,temperature,days,sown,germinated\n8.5,20,30,50,46');
    expect(read).toMatchObject({ ok: true, rows: [{ ...ROW, lot: 'the lot' }] });
    expect(read.notes.join(' ')).toContain('taken as one lot');
  });
});

describe('names every problem by line and column', () => {
  const HEAD = 'Lot,Moisture,Temperature,Days,Sown,Germinated\n';
  test.each([
    ['A,8.5,20,30,50,51', 'Line 2, Germinated: 51 germinated of 50 sown: check both.'],
    ['A,8.5,20,,50,46', 'Line 2, Days: Fill in: Days.'],
    ['A,8.5,20,30,50,-', 'Line 2, Germinated: Fill in: Germinated.'],
    ['A,,20,30,50,46', 'Line 2, Moisture: Write the moisture: seed that was stored needs one.'],
    ['A,8.5,,30,50,46', 'Line 2, Temperature: Write the temperature: seed that was stored needs one.'],
    ['A,850,20,30,50,46', 'Line 2, Moisture: Write a number between 0.5 and 60 %.'],
    ['A,8.5,warm,30,50,46', 'Line 2, Temperature: Write a plain number'],
    ['A,8.5,20,-3,50,46', 'Line 2, Days: Write a number between 0 and 36525 days.'],
    ['A,8.5,20,30,0,0', 'Line 2, Sown: Write a number of seeds between 1'],
    ['A,8.5,20,30,50,45.5', 'Line 2, Germinated: Write a whole number of seeds.'],
    [',8.5,20,30,50,46', 'Line 2, Lot: Write which lot this is.'],
    ['A,8.5,20,30,50,46,7', 'Line 2: This row has 7 cells and the headings have 6'],
  ])('%s', (row, words) => {
    const [problem, ...others] = problemsOf(HEAD + row);
    expect(problem).toContain(words);
    expect(others).toEqual([]);
  });
  test('all of them at once, the first dozen named', () => {
    const bad = Array.from({ length: 15 }, () => 'A,8.5,20,30,50,51').join('\n');
    const lines = problemsOf(HEAD + bad);
    expect(lines).toHaveLength(13);
    expect(lines[11]).toContain('Line 13,');
    expect(lines[12]).toBe('And 3 more.');
  });
  test('columns that are missing, beside those that are there', () => {
    expect(problemsOf('Lot,Weeks,Sown,Germinated\nA,4,50,46')).toEqual([
      'No column for moisture was found. The headings are: Lot, Weeks, Sown, Germinated. Name one of them “Moisture”.',
      'No column for temperature was found. The headings are: Lot, Weeks, Sown, Germinated. Name one of them “Temperature”.',
      'No column for days was found. The headings are: Lot, Weeks, Sown, Germinated. Name one of them “Days”.',
    ]);
  });
  test('what is no table at all', () => {
    expect(problemsOf('Hello')).toEqual(['The file has a heading row but no rows below it.']);
    expect(problemsOf(' ')).toEqual(['The file is empty.']);
  });
  test('more rows than can be taken', () => {
    const row = 'A,8.5,20,30,50,46\n';
    expect(rowsOf(HEAD + row.repeat(MAX_EXPERIMENT_ROWS))).toHaveLength(MAX_EXPERIMENT_ROWS);
    expect(problemsOf(HEAD + row.repeat(MAX_EXPERIMENT_ROWS + 1))[0]).toContain(`has ${MAX_EXPERIMENT_ROWS + 1} rows`);
  });
  test('a column of lots that holds something else', () => {
    const many = Array.from({ length: 61 }, (_, i) => `${i},8.5,20,30,50,46`).join('\n');
    expect(problemsOf(HEAD + many)[0]).toContain('names 61 lots');
  });
});

test('what is written is read again, whatever the lots are called', () => {
  const name = fc
    .string({ minLength: 1, maxLength: 20, unit: 'grapheme' })
    .filter((text) => /^[^\s\p{C}]+$/u.test(text));
  const row = fc.record({
    lot: name,
    moisturePercent: fc.double({ min: 3, max: 20, noNaN: true }).map((value) => Number(value.toFixed(1))),
    temperatureC: fc.integer({ min: -30, max: 60 }),
    days: fc.integer({ min: 1, max: 2000 }),
    sown: fc.integer({ min: 50, max: 200 }),
    germinated: fc.integer({ min: 0, max: 50 }),
  });
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 10 }), (rows) => {
      expect(rowsOf(writeExperiment(rows))).toEqual(rows);
    }),
    { seed: 20261125 },
  );
});
