import { expect, test } from 'vitest';
import { readWeighings } from '../../lib/schemas/calculators/weighings';

function read(text: string) {
  const result = readWeighings(text);
  if (!result.ok) throw new Error(result.message);
  return result.value;
}

test('hours and grams, decimal point or comma, apart by spaces, tabs, semicolons or a comma with a space', () => {
  expect(read('0 500\n26.5\t478.2\n48; 470,5\n60, 466.1\n')).toEqual({
    hourZero: null,
    weighings: [
      { hours: 0, weightG: 500 },
      { hours: 26.5, weightG: 478.2 },
      { hours: 48, weightG: 470.5 },
      { hours: 60, weightG: 466.1 },
    ],
  });
});

test('dates count from midnight of the first day; without a time of day, noon', () => {
  expect(read('2026-11-21 478.2 g\n2026-11-20 08:30 500')).toEqual({
    hourZero: '2026-11-20',
    weighings: [
      { hours: 8.5, weightG: 500 },
      { hours: 36, weightG: 478.2 },
    ],
  });
});

test.each([
  ['', /a line for each weighing/],
  ['0 500\nyesterday 480', /Line 2: write hours or a date/],
  ['0 500\n\n12', /Line 3: write hours/],
  ['2026-02-30 500', /Line 1: write hours or a date/],
  ['2026-11-20 25:00 500', /Line 1/],
  ['0 500\n10 0', /Line 2: write grams/],
  ['0 500\n10 -5', /Line 2/],
  ['0 500\n2026-11-20 480', /Line 2: write either dates or hours/],
  ['2026-11-20 500\n2026-11-20 490', /Line 2: this is the same time.*time of day/],
  ['0 1,200', /Line 1/],
  ['0 500\n99999999 480', /fifty years/],
])('says what is wrong with %j', (text, message) => {
  const result = readWeighings(text);
  expect(result.ok ? result.value : result.message).toMatch(message);
});

test('takes no more lines than anybody weighs a jar', () => {
  const lines = (count: number) => Array.from({ length: count }, (_, i) => `${i} 500`).join('\n');
  expect(readWeighings(lines(200)).ok).toBe(true);
  expect(readWeighings(lines(201))).toMatchObject({ ok: false });
});
