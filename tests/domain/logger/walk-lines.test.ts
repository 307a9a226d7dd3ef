import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellsOf } from '@/lib/domain/logger/row-cells';
import { lineWalker } from '@/lib/domain/logger/walk-lines';

const linesOf = (pieces: readonly string[]) => {
  const lines: [number, string, boolean][] = [];
  const walker = lineWalker((text, from, to, line, ended) => lines.push([line, text.slice(from, to), ended]));
  for (const piece of pieces) walker.push(piece);
  walker.finish();
  return lines;
};

describe('lines of a text that comes in pieces', () => {
  it.each(['\n', '\r\n', '\r'])('are the same wherever it is cut (line end %j)', (end) => {
    fc.assert(
      fc.property(
        fc.array(fc.stringMatching(/^[a-z;]{0,6}$/), { minLength: 2 }),
        fc.nat(40),
        fc.nat(40),
        (rows, a, b) => {
          const text = [...rows, ''].join(end);
          const [first, second] = [Math.min(a, b), Math.max(a, b)];
          expect(linesOf([text.slice(0, first), text.slice(first, second), text.slice(second)])).toEqual(
            rows.map((row, index) => [index + 1, row, true]),
          );
        },
      ),
    );
  });
  it('say of the last that it has no end', () => {
    expect(linesOf(['a\nb'])).toEqual([
      [1, 'a', true],
      [2, 'b', false],
    ]);
  });
});

describe('cells of a row', () => {
  it.each([
    ['a;b;;d', ';', ['a', 'b', '', 'd']],
    ['"a;b";"c ""d"""', ';', ['a;b', 'c ""d""']],
    ['  2024-03-05   10:00\t4.5 ', ' ', ['2024-03-05', '10:00', '4.5']],
    ['', ',', ['']],
  ] as const)('%j', (row, delimiter, expected) => expect(cellsOf(row, delimiter)).toEqual(expected));
});
