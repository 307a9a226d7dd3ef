import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { summariseTest } from '../../../lib/domain/germination/result';
import { guessColumns } from '../../../lib/domain/spreadsheet/guess-columns';
import { readTable } from '../../../lib/domain/spreadsheet/read-table';
import { checkRows } from '../../../lib/schemas/import/dry-run';
import { IMPORT_FIELDS, IMPORT_KINDS, type ImportKind } from '../../../lib/schemas/import/fields';
import type { ImportContext } from '../../../lib/schemas/import/import-context';

function collection(more: Partial<ImportContext> = {}): ImportContext {
  return {
    today: '2026-11-25',
    accessionNumbers: ['A1', 'A2', 'A3'],
    lotNumbers: ['L1', 'L2'],
    crops: [
      { name: 'bean', synonyms: ['Phaseolus vulgaris'] },
      { name: 'tomato', synonyms: ['Solanum lycopersicum'] },
    ],
    stores: ['Chest freezer'],
    ...more,
  };
}

function tableOf(text: string) {
  const table = readTable(new TextEncoder().encode(text));
  if (!table.ok) throw new Error(table.reason);
  return table;
}

/** Reads, guesses the columns and checks, as the import screen does. */
function check<Kind extends ImportKind>(kind: Kind, lines: string[] | string, more: Partial<ImportContext> = {}) {
  const table = tableOf(typeof lines === 'string' ? lines : `${lines.join('\n')}\n`);
  const { mapping } = guessColumns(
    table.header,
    table.rows.map((row) => row.cells),
    IMPORT_FIELDS[kind],
  );
  return checkRows(kind, table, mapping, collection(more));
}

const problemsOf = (run: { problems: { line: number | null; column: string | null; message: string }[] }) =>
  run.problems.map(({ line, column, message }) => `${line} ${column}: ${message}`);

describe('whole files in several layouts', () => {
  test('German lots: semicolons, decimal commas, day first, byte order mark', () => {
    const run = check(
      'lots',
      '\ufeffLos-Nr.;Akzession;Geerntet am;Isolierung;Gewicht (g);TKM;Feuchte %;Behälter;Lagerort;Eingelagert am;Gebeizt\r\n' +
        'B-19/1;a1;31.10.2019;Tüte;1.250,5;420,25;8,5 %;Glas;Chest Freezer;05.11.2019;nein\r\n' +
        'B-20/1;A2;2020;Käfig;1.200;;;Alubeutel;Regal 3;;Heißwasser\r\n',
    );
    expect(run.problems).toEqual([]);
    expect(run.records).toEqual([
      {
        line: 2,
        number: 'B-19/1',
        accessionNumber: 'A1',
        harvestedOn: '2019-10-31',
        harvestedPrecision: 'day',
        isolation: 'bagged flowers',
        cleanWeightG: 1250.5,
        thousandSeedWeightG: 420.25,
        moisturePercent: 8.5,
        container: 'glass-jar',
        store: 'Chest freezer',
        packedOn: '2019-11-05',
        packedPrecision: 'day',
      },
      {
        line: 3,
        number: 'B-20/1',
        accessionNumber: 'A2',
        harvestedOn: '2020-07-01',
        harvestedPrecision: 'year',
        isolation: 'cage',
        cleanWeightG: 1200,
        container: 'foil-pouch',
        store: 'Regal 3',
        packedPrecision: null,
        treatment: 'Heißwasser',
      },
    ]);
    expect(run.newStores).toEqual(['Regal 3']);
    expect(run.counts).toEqual({ rows: 2, ready: 2, rowsWithProblems: 0, problems: 0 });
    expect(run.notes).toEqual([
      'Eingelagert am: Dates were read with the day first (05.11.2019 as 2019-11-05), as in the rest of the file.',
      'Harvest dates given as a year are kept as 1 July, as a month as the 15th. (line 3)',
    ]);
  });

  test('accessions: commas, notes with quoted line ends, crops by scientific name, plural and new', () => {
    const run = check('accessions', [
      'Acc No,Variety,Species,Donor,Date received,Notes',
      'T1,Anna,Solanum lycopersicum,M. Example,12/31/2019,"tall,',
      'late"',
      'T2,Bertha,Tomatoes,,03/04/2018,',
      'C1,Clara,Carrot,,,',
      'C2,Dora,carrot,,,',
      'B1,Emma,Been,,,',
    ]);
    expect(run.problems).toEqual([]);
    expect(run.records.map(({ line, number, crop, acquiredOn }) => [line, number, crop, acquiredOn])).toEqual([
      [2, 'T1', 'tomato', '2019-12-31'],
      [4, 'T2', 'tomato', '2018-03-04'],
      [5, 'C1', 'Carrot', undefined],
      [6, 'C2', 'Carrot', undefined],
      [7, 'B1', 'Been', undefined],
    ]);
    expect(run.records[0]?.notes).toBe('tall,\nlate');
    expect(run.newCrops).toEqual(['Carrot', 'Been']);
    expect(run.notes).toEqual([
      "'Been' is not yet a crop here. If bean is meant, correct the name before importing. (line 7)",
    ]);
  });

  test('germination tests: tabs, percentages, seeds sown as replicates times seeds', () => {
    const run = check('germination tests', [
      'Lot\tDate tested\tSeeds\tGerm %',
      'l1\t5 Mar 2021\t4x50\t86',
      'L2\t6 Mar 2021\t50\t90,0',
    ]);
    expect(run.problems).toEqual([]);
    expect(run.records).toMatchObject([
      {
        lotNumber: 'L1',
        setOn: '2021-03-05',
        closedOn: '2021-03-05',
        replicatesSet: 4,
        replicates: [{ seeds: 200, normal: 172, abnormal: 0, hard: 0, fresh: 0, dead: 28 }],
      },
      { lotNumber: 'L2', replicatesSet: undefined, replicates: [{ seeds: 50, normal: 45, dead: 5 }] },
    ]);
    expect(run.notes.join('\n')).toContain('one replicate: how well replicates agreed cannot be judged');
    expect(run.notes.join('\n')).toContain('rounded to whole seeds');
    // The counts are such that the germination summary takes them.
    for (const { replicates } of run.records)
      expect(summariseTest({ replicates }).germination.proportion).toBeGreaterThan(0.8);
  });
});

describe('the whole file', () => {
  test('a required field without a column is one problem, not one on every line', () => {
    const run = check('accessions', ['Variety,Crop', 'Anna,Bean', 'Bertha,Bean']);
    expect(problemsOf(run)).toEqual(['null null: Choose the column that holds: Accession number.']);
    expect(run.counts).toEqual({ rows: 2, ready: 0, rowsWithProblems: 2, problems: 1 });
  });

  test('a column chosen for two fields, or that is not there, is refused', () => {
    const table = tableOf('No,Name,Crop\n1,Anna,Bean\n');
    const twice = checkRows('accessions', table, { number: 0, name: 1, crop: 1 }, collection());
    expect(problemsOf(twice)).toEqual(["null null: Column 'Name' is chosen for two fields: choose it once."]);
    const outside = checkRows('accessions', table, { number: 0, name: 1, crop: 7 }, collection());
    expect(problemsOf(outside)).toEqual(['null null: The file has no column 8: choose the columns again.']);
  });

  test('a row that is too long is a problem of its line; a short one is filled and noted', () => {
    const run = check('accessions', ['No,Name,Crop,Notes', '1,Anna,Bean,,x', '2,Bertha,Bean']);
    expect(run.problems).toMatchObject([{ line: 2, column: null }]);
    expect(run.problems[0]?.message).toContain('This line has 5 cells under 4 headings');
    expect(run.records.map((record) => record.number)).toEqual(['2']);
    expect(run.notes.join()).toContain('Rows with fewer cells');
    expect(run.counts).toEqual({ rows: 2, ready: 1, rowsWithProblems: 1, problems: 1 });
  });

  test('a problem names line, heading, field and the cell as written', () => {
    const run = check('accessions', ['Acc No,Variety,Crop', 'A9,,Bean']);
    expect(run.problems).toEqual([{ line: 2, column: 'Variety', field: 'name', value: '', message: 'Fill in: Name.' }]);
  });
});

describe('numbers by the convention of column and file', () => {
  const lots = (...rows: string[]) => check('lots', ['Lot;Acc;Harvest;Weight;TSW', ...rows]);

  test('a value that could be read two ways is refused when nothing in the file decides', () => {
    const run = lots('X1;A1;2019;1.200;');
    expect(problemsOf(run)).toEqual([
      '2 Weight: This could be 1200 or 1.2: say whether the file uses decimal commas or points, or write one of these.',
    ]);
  });
  test('another column of the file decides, which is said', () => {
    const run = lots('X1;A1;2019;1.200;4,5');
    expect(run.records[0]?.cleanWeightG).toBe(1200);
    expect(run.notes.join()).toContain("Weight: '1.200' was read with a decimal comma");
  });
  test('the steward decides', () => {
    const lines = ['Lot;Acc;Harvest;Weight', 'X1;A1;2019;1.200'];
    expect(check('lots', lines, { decimalMark: '.' }).records[0]?.cleanWeightG).toBe(1.2);
    expect(check('lots', lines, { decimalMark: ',' }).records[0]?.cleanWeightG).toBe(1200);
    const mixed = ['Lot;Acc;Harvest;Weight', 'X1;A1;2019;1.200', 'X2;A1;2019;4.5', 'X3;A1;2019;4,5'];
    expect(check('lots', mixed).problems.map((problem) => problem.line)).toEqual([2]);
    expect(check('lots', mixed, { decimalMark: ',' }).records.map((record) => record.cleanWeightG)).toEqual([
      1200, 4.5, 4.5,
    ]);
  });
  test('what a column proves outweighs the steward', () => {
    const lines = ['Lot;Acc;Harvest;Weight', 'X1;A1;2019;1.200', 'X2;A1;2019;4.5'];
    expect(check('lots', lines, { decimalMark: ',' }).records[0]?.cleanWeightG).toBe(1.2);
  });
  test('units are converted or refused', () => {
    const run = lots('X1;A1;2019;1,5 kg;450 mg', 'X2;A1;2019;2 bags;');
    expect(run.records[0]).toMatchObject({ cleanWeightG: 1500, thousandSeedWeightG: 0.45 });
    expect(problemsOf(run)).toEqual(["3 Weight: The unit 'bags' is not known here: write the number in grams."]);
  });
  test('limits are those of the forms, at the boundary', () => {
    const run = check('lots', [
      'Lot;Acc;Harvest;MC%;Weight',
      'X1;A1;2019;60;100000',
      'X2;A1;2019;60.1;5',
      'X3;A1;2019;0.5;5',
      'X4;A1;2019;0.4;100000.5',
    ]);
    expect(run.records.map((record) => record.number)).toEqual(['X1', 'X3']);
    expect(problemsOf(run)).toEqual([
      '3 MC%: Write a number between 0.5 and 60 %.',
      '5 Weight: Write a number between 0.0001 and 100000 g.',
      '5 MC%: Write a number between 0.5 and 60 %.',
    ]);
  });
  test('a dash or n/a in a number cell is blank; other words are a problem', () => {
    const run = lots('X1;A1;2019;-;n/a', 'X2;A1;2019;about 12;');
    expect(run.records[0]?.cleanWeightG).toBeUndefined();
    expect(run.problems).toMatchObject([{ line: 3, value: 'about 12' }]);
  });
  test('counts are whole', () => {
    const run = check('lots', ['Lot;Acc;Harvest;Seeds', 'X1;A1;2019;1.200', 'X2;A1;2019;12,5']);
    expect(run.records[0]?.seedCount).toBe(1200);
    expect(problemsOf(run)).toEqual(['3 Seeds: Write a whole number of seeds.']);
  });
  test('a column of proportions is read as percent when every value shows it', () => {
    const lines = ['Lot;Date;Seeds;Germination', 'L1;2021;50;0,92', 'L2;2021;50;0,5', 'L1;2022;50;1'];
    const run = check('germination tests', lines);
    expect(run.records.map((record) => record.replicates[0].normal)).toEqual([46, 25, 50]);
    expect(run.notes.join()).toContain('read as proportions');
    const mixed = check('germination tests', [...lines, 'L2;2022;50;85']);
    expect(mixed.problems.map((problem) => problem.line)).toEqual([2, 3]);
  });
});

describe('dates', () => {
  const harvested = (...dates: string[]) =>
    check('lots', ['Lot;Acc;Harvest', ...dates.map((date, index) => `X${index};A1;${date}`)]);

  test('a harvest in the future is refused; one of this year is not, though 1 July may lie ahead', () => {
    expect(problemsOf(harvested('26.11.2026'))).toEqual([
      '2 Harvest: This date is after today (2026-11-25): check the year.',
    ]);
    expect(harvested('25.11.2026').records[0]?.harvestedOn).toBe('2026-11-25');
    const early = check('lots', ['Lot;Acc;Harvest', 'X1;A1;2026', 'X2;A1;2027'], { today: '2026-03-01' });
    expect(early.records).toMatchObject([{ harvestedOn: '2026-03-01', harvestedPrecision: 'year' }]);
    expect(early.problems.map((problem) => problem.line)).toEqual([3]);
  });
  test('impossible days and words are refused', () => {
    expect(problemsOf(harvested('31.02.2019', 'long ago'))).toEqual([
      '2 Harvest: The calendar has no such day: check day and month.',
      '3 Harvest: Write a date such as 2019-12-31, 31.12.2019, Dec 2019 or 2019.',
    ]);
  });
  test('an order that nothing shows is assumed day-first and said', () => {
    const run = harvested('03/04/2019');
    expect(run.records[0]?.harvestedOn).toBe('2019-04-03');
    expect(run.notes.join()).toContain('Harvest: Dates were read with the day first (03/04/2019 as 2019-04-03)');
  });
  test('the steward says the order, also for a column with both', () => {
    const lines = ['Lot;Acc;Harvest', 'X1;A1;03/04/2019'];
    expect(check('lots', lines, { dateOrder: 'month-first' }).records[0]?.harvestedOn).toBe('2019-03-04');
    const both = [...lines, 'X2;A1;31/12/2019', 'X3;A1;12/31/2019'];
    expect(check('lots', both).problems.map((problem) => problem.line)).toEqual([2]);
    const run = check('lots', both, { dateOrder: 'day-first' });
    expect(run.records.map((record) => record.harvestedOn)).toEqual(['2019-04-03', '2019-12-31']);
    expect(problemsOf(run)).toEqual(['4 Harvest: The calendar has no such day: check day and month.']);
  });
  test('another date column of the file shows it', () => {
    const run = check('lots', ['Lot;Acc;Harvest;Packed', 'X1;A1;03/04/2019;12/31/2019']);
    expect(run.records[0]?.harvestedOn).toBe('2019-03-04');
  });
  test('packing before the harvest is refused', () => {
    const run = check('lots', ['Lot;Acc;Harvest;Packed', 'X1;A1;2019-09-02;2019-09-01', 'X2;A1;2019-09-01;2019-09-01']);
    expect(problemsOf(run)).toEqual(['2 Packed: This is before the harvest (2019-09-02): check both dates.']);
  });
});

describe('against the collection and within the file', () => {
  test('numbers already kept, or twice in the file, whatever their capitals', () => {
    const run = check('accessions', ['No,Name,Crop', 'a1,Anna,Bean', 'N1,Bertha,Bean', 'n1,Clara,Bean']);
    expect(problemsOf(run)).toEqual([
      '2 No: The collection already has an accession a1: leave this line out or give another number.',
      '4 No: Accession n1 is already on line 3: give each accession its own number.',
    ]);
    const lots = check('lots', ['Lot,Acc,Harvest', 'l1,A1,2019', 'X1,A1,2019', 'x1,A2,2019']);
    expect(lots.problems.map(({ line, field }) => [line, field])).toEqual([
      [2, 'number'],
      [4, 'number'],
    ]);
  });
  test('a lot needs an accession, a test needs a lot', () => {
    expect(problemsOf(check('lots', ['Lot,Acc,Harvest', 'X1,Z9,2019']))).toEqual([
      '2 Acc: There is no accession Z9: correct the number, or import accessions first.',
    ]);
    expect(problemsOf(check('germination tests', ['Lot,Date,Seeds,Germ %', 'Z9,2021,50,90']))).toEqual([
      '2 Lot: There is no lot Z9: correct the number, or import lots first.',
    ]);
  });
  test('lots without a number are taken and counted, but not the same line twice', () => {
    const run = check('lots', ['Acc,Harvest,Weight', 'A1,2019,5', 'A1,2020,5', 'A1,2019,5']);
    expect(run.records.map((record) => record.number)).toEqual([undefined, undefined]);
    expect(run.problems).toMatchObject([{ line: 4, message: expect.stringContaining('repeats line 2') }]);
    expect(run.notes).toContain('Lots without a number get one on import. (lines 2, 3)');
  });
  test('a test already kept, or the same line twice, is refused', () => {
    const lines = [
      'Lot,Date,Seeds,Germinated',
      'L1,2021-03-05,50,40',
      'L1,2021-03-05,50,40',
      'L1,2021-03-05,50,41',
      'L2,2021-03-05,50,40',
    ];
    const run = check('germination tests', lines, { tests: [{ lotNumber: 'L2', setOn: '2021-03-05' }] });
    expect(run.records.map((record) => record.line)).toEqual([2, 4]);
    expect(run.problems.map((problem) => problem.line)).toEqual([3, 5]);
  });
});

describe('lots', () => {
  test('an isolation that is not understood is kept as not known, with its words saved', () => {
    const run = check('lots', ['Lot,Acc,Harvest,Isolation,Notes', 'X1,A1,2019,see notebook,good', 'X2,A1,2019,,']);
    expect(run.records.map(({ isolation, notes }) => [isolation, notes])).toEqual([
      ['unknown', 'good\nIsolation: see notebook'],
      ['unknown', undefined],
    ]);
    expect(run.notes.join()).toContain("'see notebook' was not understood");
  });
  test('a container that is not understood is refused with the words that are', () => {
    const run = check('lots', ['Lot,Acc,Harvest,Container', 'X1,A1,2019,drawer']);
    expect(run.problems[0]?.message).toMatch(/^Write one of: foil pouch, glass jar, .*open tray\.$/);
  });
  test('a lot that is used up (0 g, 0 seeds) comes in without stock', () => {
    const run = check('lots', ['Lot,Acc,Harvest,Weight,Seeds', 'X1,A1,2019,0,0']);
    expect(run.problems).toEqual([]);
    expect(run.records[0]).toMatchObject({ number: 'X1', accessionNumber: 'A1' });
    expect(run.records[0]?.cleanWeightG).toBeUndefined();
    expect(run.notes.join()).toContain('come in without stock');
  });
  test('weight, thousand-seed weight and count that tell different stories are noted', () => {
    const run = check('lots', [
      'Lot,Acc,Harvest,Weight,TSW,Seeds',
      'X1,A1,2019,100,200,500',
      'X2,A1,2019,100,200,5000',
    ]);
    expect(run.notes.filter((note) => note.includes('do not agree'))).toEqual([
      'Weight, thousand-seed weight and seed count do not agree (more than a quarter apart): check them. (line 3)',
    ]);
  });
});

describe('germination counts', () => {
  const tests = (header: string, ...rows: string[]) =>
    check('germination tests', [`Lot,Date,Seeds,${header}`, ...rows.map((row) => `L1,2021-03-05,${row}`)]);

  test('more germinated than sown is refused, all germinated is not', () => {
    const run = tests('Germinated', '50,50', '50,51');
    expect(run.records[0]?.replicates[0]).toMatchObject({ normal: 50, dead: 0 });
    expect(run.problems).toMatchObject([{ line: 3, column: 'Germinated' }]);
    expect(run.problems[0]?.message).toContain('More seeds germinated (51) than were sown (50)');
  });
  test('none germinated is a result, not a blank', () => {
    expect(tests('Germinated', '50,0').records[0]?.replicates[0]).toMatchObject({ normal: 0, dead: 50 });
    expect(tests('Germinated', '50,').problems[0]?.message).toContain('Fill in how many seeds germinated');
  });
  test('classes that add up to more than sown, or leave seeds unexplained though dead ones were counted, are refused', () => {
    const run = tests('Germinated,Abnormal,Hard,Dead', '50,40,5,3,2', '50,40,5,3,3', '50,40,5,3,1', '50,40,5,3,');
    expect(run.records.map((record) => record.replicates[0])).toEqual([
      { seeds: 50, normal: 40, abnormal: 5, hard: 3, fresh: 0, dead: 2 },
    ]);
    expect(run.problems.map(({ line, field }) => [line, field])).toEqual([
      [3, 'seedsSown'],
      [4, 'dead'],
      [5, 'lotNumber'],
    ]);
  });
  test('count and percentage that contradict are refused', () => {
    const run = tests('Germinated,Germ %', '50,45,90', '50,45,80');
    expect(problemsOf(run)).toEqual(['3 Germ %: 45 of 50 seeds is not 80 %: correct one of them.']);
  });
  test('a percentage that no count of the seeds gives is rounded and noted', () => {
    expect(tests('Germ %', '10,84').notes.join()).toContain('not that of a whole number of the seeds sown');
    expect(tests('Germ %', '30,83').notes.join()).not.toContain('not that of a whole number');
  });
  test('without seeds sown there is no result', () => {
    expect(problemsOf(tests('Germ %', ',90'))).toEqual(['2 Seeds: Fill in: Seeds sown.']);
  });
  test('a test that closes before it was set is refused', () => {
    const run = tests('Germinated,Closed', '50,40,2021-03-04', '50,41,2021-03-19');
    expect(run.problems).toMatchObject([{ line: 2, column: 'Closed' }]);
    expect(run.records[0]?.closedOn).toBe('2021-03-19');
  });
});

test('twenty thousand lots are all checked, each problem on its own line', () => {
  const rows = Array.from({ length: 20_000 }, (_, index) => {
    const weight = index % 1000 === 999 ? 'lost' : `${index + 1},5`;
    return `X${index};A${(index % 3) + 1};${(index % 28) + 1}.09.2019;Tüte;12;${weight};4,5;;8,5;Glas;Regal ${index % 7};;;;`;
  });
  const header = 'Lot;Acc;Harvest;Isolation;Plants;Weight;TSW;Seeds;MC%;Jar;Location;Packed;Treated;Notes;Extra';
  const run = check('lots', [header, ...rows]);
  expect(run.counts).toEqual({ rows: 20_000, ready: 19_980, rowsWithProblems: 20, problems: 20 });
  expect(run.problems[0]?.line).toBe(1001);
  expect(run.problems.at(-1)?.line).toBe(20_001);
  expect(run.newStores).toHaveLength(7);
});

describe('laws', () => {
  const number = fc
    .tuple(fc.nat(2000), fc.constantFrom('', '.5', ',5', '.250', ' g', ' %', 'x'))
    .map((parts) => parts.join(''));
  const date = fc.tuple(fc.nat(33), fc.nat(14), fc.integer({ min: 1890, max: 2030 })).map((parts) => parts.join('.'));
  const cell = fc.oneof(
    number,
    date,
    fc.constantFrom('', '-', 'A1', 'a2', 'L1', 'L2', 'Bean', 'jar', 'bag', 'yes', '4x50', '0', '0,5', '2019', '43831'),
    fc.string({ maxLength: 6 }),
  );
  const table = fc.array(fc.array(cell, { minLength: 14, maxLength: 14 }), { minLength: 1, maxLength: 12 });

  test.each(IMPORT_KINDS)(
    'any cells at all in a table of %s: each row is a record or has a problem, none is both',
    (kind) => {
      fc.assert(
        fc.property(table, (cells) => {
          const fields = IMPORT_FIELDS[kind];
          const rows = cells.map((row, index) => ({ line: index + 2, cells: row }));
          const header = fields.map((field) => field.label);
          const mapping = Object.fromEntries(fields.map((field, index) => [field.key, index]));
          const whole = { ok: true, header, rows, ragged: [], delimiter: ';', encoding: 'utf-8', notes: [] } as const;
          const run = checkRows(kind, { ...whole, ragged: [], notes: [] }, mapping, collection());

          const ready = run.records.map((record) => record.line);
          const refused = new Set(run.problems.map((problem) => problem.line));
          expect([...ready, ...refused].sort((a, b) => Number(a) - Number(b))).toEqual(rows.map((row) => row.line));
          expect(run.counts).toMatchObject({ rows: rows.length, ready: ready.length, rowsWithProblems: refused.size });
          for (const problem of run.problems) expect(problem.message.length).toBeGreaterThan(10);
        }),
        { seed: 20261125, numRuns: 200 },
      );
    },
  );

  test('a count written as percent comes back as that count, for any test of up to 200 seeds', () => {
    const counts = fc.integer({ min: 1, max: 200 }).chain((sown) => fc.tuple(fc.constant(sown), fc.nat(sown)));
    fc.assert(
      fc.property(counts, ([sown, germinated]) => {
        const percent = ((germinated / sown) * 100).toFixed(1);
        const run = check('germination tests', ['Lot;Date;Seeds;Germ %', `L1;2021;${sown};${percent}`]);
        if (Number(percent) > 0 && Number(percent) < 1) expect(run.records).toEqual([]);
        else
          expect(run.records[0]?.replicates).toMatchObject([
            { seeds: sown, normal: germinated, dead: sown - germinated },
          ]);
      }),
      { seed: 20261125, numRuns: 200 },
    );
  });
});
