import { expect, test } from 'vitest';
import { z } from 'zod';
import { readWith, writtenLines } from '../../lib/schemas/calculators/written-lines';

test('empty lines are passed over, and the others keep their numbers', () => {
  expect(writtenLines('first\r\n\n  \t\n fourth\n')).toEqual([
    { line: 'first', number: 1 },
    { line: ' fourth', number: 4 },
  ]);
  expect(writtenLines(' \n')).toEqual([]);
});

test('a reader gives its value to the field, or its message', () => {
  const even = z
    .string()
    .transform(
      readWith((text) =>
        Number(text) % 2 === 0 ? { ok: true, value: Number(text) } : { ok: false, message: `${text} is odd.` },
      ),
    );
  expect(even.parse('4')).toBe(4);
  expect(even.safeParse('5').error?.issues.map(({ message }) => message)).toEqual(['5 is odd.']);
});
