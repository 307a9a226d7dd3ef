import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { MAX_COLUMNS, MAX_FILE_BYTES, MAX_ROWS, readTable } from '../../../lib/domain/spreadsheet/read-table';
import type { Delimiter } from '../../../lib/domain/spreadsheet/scan-records';
import { utf8, utf16, writeTable } from './write-table';

const RUNS = { seed: 20261125, numRuns: 300 };

function read(input: string | Uint8Array, options: { delimiter?: Delimiter } = {}) {
  const result = readTable(typeof input === 'string' ? utf8(input) : input, options);
  if (!result.ok) throw new Error(result.reason);
  return result;
}
function reasonFor(input: string | Uint8Array): string {
  const result = readTable(typeof input === 'string' ? utf8(input) : input);
  return result.ok ? `read ${result.rows.length} rows` : result.reason;
}
const cellsOf = (table: ReturnType<typeof read>) => [table.header, ...table.rows.map((row) => row.cells)];

describe('layouts', () => {
  test('semicolons with decimal commas and a byte order mark', () => {
    const table = read(
      utf8('Sorte;Ernte;TKM\r\nRote Bete;31.12.2019;4,5\r\nMöhre;01.09.2020;1,25\r\n', { mark: true }),
    );
    expect(table.delimiter).toBe(';');
    expect(table.encoding).toBe('utf-8');
    expect(cellsOf(table)).toEqual([
      ['Sorte', 'Ernte', 'TKM'],
      ['Rote Bete', '31.12.2019', '4,5'],
      ['Möhre', '01.09.2020', '1,25'],
    ]);
  });

  test('tabs with a decimal comma in every row', () => {
    const table = read('Lot, number\tWeight\nA, 1\t4,5\nA, 2\t3,25\n');
    expect(table.delimiter).toBe('\t');
    expect(table.rows[1]?.cells).toEqual(['A, 2', '3,25']);
  });

  test('semicolons when every row has more decimal commas than semicolons', () => {
    const table = read('a;b\n1,5 to 2,5;3,5\n2,5 to 3,5;4,5\n');
    expect(table.delimiter).toBe(';');
  });

  test('commas with quoted line ends: a row has the line on which it begins', () => {
    const table = read('Lot,Notes\nL1,"first\nsecond, third"\nL2,"say ""true"""\n\nL3,\n');
    expect(table.rows).toEqual([
      { line: 2, cells: ['L1', 'first\nsecond, third'] },
      { line: 4, cells: ['L2', 'say "true"'] },
      { line: 6, cells: ['L3', ''] },
    ]);
  });

  test('blank lines and rows of delimiters above and between are passed over', () => {
    const table = read('\n\n;;\nLot;Weight;Store\n;;\nL1;5;Freezer\n');
    expect(table.header).toEqual(['Lot', 'Weight', 'Store']);
    expect(table.rows).toEqual([{ line: 6, cells: ['L1', '5', 'Freezer'] }]);
  });

  test('a lone title above the headings is passed over and said', () => {
    const table = read('Our seed list;;\nLot;Weight;Store\nL1;5;Freezer\n');
    expect(table.header).toEqual(['Lot', 'Weight', 'Store']);
    expect(table.notes).toEqual(['Line 1 was taken for a title and passed over; the headings are on line 2.']);
  });

  test('an announced delimiter is obeyed and does not shift the line numbers', () => {
    const table = read('sep=;\r\na,b;c\r\n1,2;3\r\n');
    expect(table.header).toEqual(['a,b', 'c']);
    expect(table.rows[0]?.line).toBe(3);
  });

  test('a delimiter that the steward chose wins', () => {
    expect(read('a;b,c\n1;2,3\n').header).toEqual(['a', 'b,c']);
    expect(read('a;b,c\n1;2,3\n', { delimiter: ',' }).header).toEqual(['a;b', 'c']);
  });

  test('line ends of any kind, also mixed', () => {
    expect(cellsOf(read('a,b\r1,2\r3,4'))).toEqual(cellsOf(read('a,b\r\n1,2\n3,4\n')));
  });

  test('one column is a table too', () => {
    expect(cellsOf(read('Variety\nAnna\nBertha\n'))).toEqual([['Variety'], ['Anna'], ['Bertha']]);
  });

  test('a quotation mark inside a cell stays as it stands', () => {
    expect(read('Pot,Lot\n5" pot,L1\n').rows[0]?.cells).toEqual(['5" pot', 'L1']);
  });
});

describe('encodings', () => {
  const text = 'Variété;Poids\nChou “d’été” €;4,5\n';
  test('UTF-16 with its mark, both byte orders', () => {
    for (const order of ['little', 'big'] as const) {
      const table = read(utf16(text, order));
      expect(table.encoding).toBe(order === 'little' ? 'utf-16le' : 'utf-16be');
      expect(table.rows[0]?.cells[0]).toBe('Chou “d’été” €');
    }
  });

  test('Windows-1252 when the bytes are not UTF-8, curly quotes and euro sign included, and said in a note', () => {
    const special: Record<string, number> = { '“': 0x93, '”': 0x94, '’': 0x92, '€': 0x80 };
    const table = read(Uint8Array.from([...text].map((letter) => special[letter] ?? letter.charCodeAt(0))));
    expect(table.encoding).toBe('windows-1252');
    expect(cellsOf(table)).toEqual([
      ['Variété', 'Poids'],
      ['Chou “d’été” €', '4,5'],
    ]);
    expect(table.notes.join()).toContain('Windows-1252');
  });
});

describe('ragged rows', () => {
  test('a short row is filled with blanks and listed; a long one is left out and listed', () => {
    const table = read('a,b,c\n1,2,3\n1,2\n1,2,3,4\n1,2,3,\n');
    expect(table.rows).toEqual([
      { line: 2, cells: ['1', '2', '3'] },
      { line: 3, cells: ['1', '2', ''] },
      { line: 5, cells: ['1', '2', '3'] },
    ]);
    expect(table.ragged).toEqual([
      { line: 3, found: 2, expected: 3, kept: true },
      { line: 4, found: 4, expected: 3, kept: false },
    ]);
  });
});

describe('refusals say what to do', () => {
  test('a workbook, by its first bytes', () => {
    const xlsx = Uint8Array.from([0x50, 0x4b, 3, 4, 20, 0, 6, 0, 8]);
    expect(reasonFor(xlsx)).toMatch(/workbook \(\.xlsx or \.ods\).*save it as CSV/);
    expect(reasonFor(Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1]))).toMatch(/\.xls\).*save it as CSV/);
  });
  test('other files that are no text', () => {
    expect(reasonFor(Uint8Array.from([1, 2, 0, 4]))).toMatch(/not a text file/);
    expect(reasonFor('%PDF-1.7')).toMatch(/PDF/);
    expect(reasonFor('<!DOCTYPE html><table>')).toMatch(/web page/);
  });
  test('nothing in it, or headings only', () => {
    expect(reasonFor('')).toBe('The file is empty.');
    expect(reasonFor('\n ; \n')).toBe('The file is empty.');
    expect(reasonFor('a;b\n')).toMatch(/no rows below/);
  });
  test('a quotation mark that is never closed, with the line on which it was opened', () => {
    expect(reasonFor('a,b\n1,2\n3,"open\n5,6\n7,8\n')).toMatch(/opened on line 3 is never closed/);
    expect(reasonFor('sep=,\na,b\n1,2\n3,"open\n')).toMatch(/opened on line 4 is never closed/);
  });
  test('a quotation mark that swallows rows until another one', () => {
    expect(reasonFor('a,b\n1,"open\n2,3\n4,"closed"\n')).toMatch(/On line 2 a cell begins with a quotation mark/);
  });
  test('limits, at the boundary', () => {
    const rows = (count: number) => `a\n${'1\n'.repeat(count)}`;
    expect(reasonFor(rows(MAX_ROWS))).toBe(`read ${MAX_ROWS} rows`);
    expect(reasonFor(rows(MAX_ROWS + 1))).toBe(
      'The file has 20001 rows; 20000 can be read at once. Split it into smaller files.',
    );
    const wide = (count: number) =>
      `${new Array(count).fill('x').join(',')}\n${new Array(count).fill('1').join(',')}\n`;
    expect(reasonFor(wide(MAX_COLUMNS))).toBe('read 1 rows');
    expect(reasonFor(wide(MAX_COLUMNS + 1))).toMatch(/201 columns; 200 can be read/);
    expect(reasonFor(new Uint8Array(MAX_FILE_BYTES + 1))).toMatch(/larger than 25 MB/);
  });
});

test('twenty thousand rows of fifteen columns come back whole', () => {
  const header = Array.from({ length: 15 }, (_, column) => `Column ${column}`);
  const rows = Array.from({ length: MAX_ROWS }, (_, row) => header.map((_, column) => `${row},${column}`));
  const table = read(writeTable([header, ...rows], ';'));
  expect(table.rows).toHaveLength(MAX_ROWS);
  expect(table.rows.at(-1)).toEqual({ line: MAX_ROWS + 1, cells: rows.at(-1) });
});

describe('round trip', () => {
  // Characters that matter to a reader of delimited text, and some that do not; no lone surrogates, which UTF-8 lacks.
  const cell = fc.string({
    unit: fc.constantFrom(...'ab1.,;\t"\'\n ä€ß種', '\r\n', '\r'),
    maxLength: 8,
  });
  // A heading row of two or more filled cells, and no blank rows: those are dropped by design.
  const table = fc.integer({ min: 2, max: 5 }).chain((width) =>
    fc.tuple(
      fc.array(
        fc.string({ unit: fc.constantFrom(...'abc ,;"\n'), maxLength: 5 }).map((text) => `h${text}`),
        {
          minLength: width,
          maxLength: width,
        },
      ),
      fc.array(
        fc.array(cell, { minLength: width, maxLength: width }).filter((row) => row.some((text) => text.trim() !== '')),
        { minLength: 1, maxLength: 8 },
      ),
    ),
  );
  const delimiter = fc.constantFrom<Delimiter>(',', ';', '\t');
  const lineEnd = fc.constantFrom('\r\n', '\n', '\r');

  test('any table reads back identical when the delimiter is known', () => {
    fc.assert(
      fc.property(table, delimiter, lineEnd, ([header, rows], mark, end) => {
        const result = read(writeTable([header, ...rows], mark, { lineEnd: end }), { delimiter: mark });
        expect(cellsOf(result)).toEqual([header, ...rows]);
        expect(result.ragged).toEqual([]);
      }),
      RUNS,
    );
  });

  test('any table reads back identical with its delimiter found, when other delimiters stand in quotes', () => {
    fc.assert(
      fc.property(table, delimiter, lineEnd, fc.boolean(), ([header, rows], mark, end, withMark) => {
        const text = writeTable([header, ...rows], mark, { quoteAlso: ',;\t', lineEnd: end });
        const result = read(utf8(text, { mark: withMark }));
        expect(result.delimiter).toBe(mark);
        expect(cellsOf(result)).toEqual([header, ...rows]);
      }),
      RUNS,
    );
  });

  test('decimal commas outside quotes never win over the real delimiter', () => {
    const number = fc.tuple(fc.integer({ min: 0, max: 999 }), fc.integer({ min: 0, max: 99 }));
    const rows = fc.array(fc.array(number, { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(rows, fc.constantFrom<Delimiter>(';', '\t'), (values, mark) => {
        const cells = values.map((row) => row.map(([whole, part]) => `${whole},${part}`));
        const result = read(writeTable([['a', 'b', 'c'], ...cells], mark));
        expect(cellsOf(result)).toEqual([['a', 'b', 'c'], ...cells]);
      }),
      RUNS,
    );
  });

  test('a row has the line on which it begins, whatever was in the rows before', () => {
    fc.assert(
      fc.property(table, lineEnd, ([header, rows], end) => {
        const result = read(writeTable([header, ...rows], ';', { lineEnd: end }), { delimiter: ';' });
        let line = 1;
        const expected = [header, ...rows].map((row) => {
          const begins = line;
          for (const text of row) line += text.split(/\r\n|\n|\r/).length - 1;
          line += 1;
          return begins;
        });
        expect(result.rows.map((row) => row.line)).toEqual(expected.slice(1));
      }),
      RUNS,
    );
  });

  test('any bytes at all give a table or a reason, never an exception', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 60 }), (bytes) => {
        const result = readTable(bytes);
        expect(result.ok || result.reason.length > 10).toBe(true);
      }),
      RUNS,
    );
  });
});
