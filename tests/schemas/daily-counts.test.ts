import { describe, expect, test } from 'vitest';
import { readDailyCounts } from '../../lib/schemas/calculators/daily-counts';

const table = (text: string) => {
  const read = readDailyCounts(text);
  if (!read.ok) throw new Error(read.message);
  return read.value.lines.map(({ day, counts }) => [day, ...counts]);
};
const message = (text: string) => {
  const read = readDailyCounts(text);
  return read.ok ? 'read' : read.message;
};

describe('counts by day are read however they are parted', () => {
  test.each([
    ['blanks', '3 12\n5  9'],
    ['tabs', '3\t12\r\n5\t9\r\n'],
    ['semicolons', '3;12\n5; 9'],
    ['commas', '3,12\n5,9'],
    ['commas and blanks', '3, 12\n5,  9'],
    ['a notebook', 'day 3: 12\n\nDay 5: 9\n'],
    ['a heading', 'day count\n3 12\n5 9'],
    ['a heading of several dishes', 'Tag;Schale 1\n3;12\n5;9'],
  ])('%s', (_, text) => {
    expect(table(text)).toEqual([
      [3, 12],
      [5, 9],
    ]);
  });

  test('a comma that parts nothing is a decimal comma', () => {
    expect(table('3,5 12')).toEqual([[3.5, 12]]);
    expect(table('3,5;12;9')).toEqual([[3.5, 12, 9]]);
    expect(table('3,5\t12')).toEqual([[3.5, 12]]);
    expect(table('3.5, 12, 9')).toEqual([[3.5, 12, 9]]);
    expect(table('3,5,12')).toEqual([[3, 5, 12]]);
  });

  test('a dash or an empty cell is a dish that was not looked at', () => {
    expect(table('3 12 - 4')).toEqual([[3, 12, null, 4]]);
    expect(table('3;12;;4')).toEqual([[3, 12, null, 4]]);
    expect(table('3\t12\t4\n5\t3\t')).toEqual([
      [3, 12, 4],
      [5, 3, null],
    ]);
  });

  test('day 0 may stand there with nothing germinated', () => {
    expect(table('0 0\n3 12')).toHaveLength(2);
  });
});

describe('what cannot be read is said with its line', () => {
  test.each([
    ['', 'Write a line for each inspection'],
    ['  \n ', 'Write a line for each inspection'],
    ['3 12\nx 9', "Line 2: 'x' is not a day."],
    ['3 12\n\n5', 'Line 3: a count is missing behind day 5.'],
    ['3 12 4\n5 9', 'Line 2: 1 count here and 2 in the first line. Write - for a dish not looked at.'],
    ['3 12\n3 9', 'Line 2: day 3 must come after day 3 of the line before.'],
    ['5 12\n3 9', 'Line 2: day 3 must come after day 5'],
    ['3 1.5', "Line 1: '1.5' is not a count."],
    ['3 many', "Line 1: 'many' is not a count."],
    ['3 -2', "Line 1: '-2' is not a count."],
    ['-1 2', 'Line 1: write a day from 0'],
    ['20261125 2', 'Line 1: write a day from 0'],
    ['0 2', 'Line 1: nothing can have germinated on day 0'],
    [Array.from({ length: 201 }, (_, i) => `${i + 1} 1`).join('\n'), 'Write at most 200 inspections.'],
    [`1 ${'1 '.repeat(21)}`, 'Line 1: write counts of at most 20 dishes.'],
  ])('%j', (text, expected) => {
    expect(message(text)).toContain(expected);
  });
});
