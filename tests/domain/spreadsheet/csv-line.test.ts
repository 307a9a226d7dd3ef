import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CsvCell, csvLine } from '../../../lib/domain/spreadsheet/csv-line';

describe('csvLine', () => {
  test('puts quotes round commas, quotes and line breaks only, and ends with CRLF', () => {
    expect(csvLine(['kale', 'a, b', 'say "yes"', 'one\ntwo', null, -3.5])).toBe(
      'kale,"a, b","say ""yes""","one\ntwo",,-3.5\r\n',
    );
  });

  test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', ' =1', '=HYPERLINK("http://x.example")'])(
    'text that a spreadsheet would run is shown as text: %j',
    (text) => {
      const [[read]] = parse(csvLine([text, 'x'])) as [[string]];
      expect(read).toBe(`'${text}`);
    },
  );

  test('numbers stay numbers, negative ones too', () => {
    expect(csvLine([-200, 0, 1e-7])).toBe('-200,0,1e-7\r\n');
    expect(() => csvLine([Number.NaN])).toThrow(/NaN/);
  });

  test('whatever was written is read back, but for the apostrophe', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', '"', ',', '\n', '\r', "'", '=', '-', ' ', 'ß', '種') });
    fc.assert(
      fc.property(fc.array(cell, { minLength: 2, maxLength: 5 }), (cells: CsvCell[]) => {
        const [read] = parse(csvLine(cells), { relax_column_count: true }) as string[][];
        const plain = (read ?? []).map((text, index) => (text === `'${cells[index]}` ? text.slice(1) : text));
        expect(plain).toEqual(cells);
      }),
      { seed: 20261130 },
    );
  });
});
