import fc from 'fast-check';
import { expect, test } from 'vitest';
import { editDistance } from '../../../lib/domain/spreadsheet/edit-distance';
import { plainWords } from '../../../lib/domain/spreadsheet/plain-words';

test('case, accents and punctuation make no difference; percent and number signs become words', () => {
  expect(plainWords('  Keimfähigkeit (%) ')).toBe('keimfahigkeit percent');
  expect(plainWords('Acc. No.')).toBe('acc no');
  expect(plainWords('Acc #')).toBe('acc no');
  expect(plainWords('Nº de lot')).toBe('no de lot');
  expect(plainWords('Gefäß/Größe')).toBe('gefass grosse');
  expect(plainWords('1000-seed_wt')).toBe('1000 seed wt');
  expect(plainWords(' - ')).toBe('');
});

test('distance counts letters put in, taken out or changed', () => {
  expect(editDistance('kitten', 'sitting', 5)).toBe(3);
  expect(editDistance('moisture', 'moistrue', 3)).toBe(2);
  expect(editDistance('', 'abc', 3)).toBe(3);
  expect(editDistance('abc', 'xyz', 1)).toBe(2);
});

test('distance is symmetric, zero only for equal words, and obeys the triangle inequality', () => {
  const word = fc.string({ unit: fc.constantFrom(...'abc'), maxLength: 6 });
  fc.assert(
    fc.property(word, word, word, (a, b, c) => {
      const between = (x: string, y: string) => editDistance(x, y, 20);
      expect(between(a, b)).toBe(between(b, a));
      expect(between(a, b) === 0).toBe(a === b);
      expect(between(a, c)).toBeLessThanOrEqual(between(a, b) + between(b, c));
      expect(editDistance(a, b, 1)).toBe(Math.min(between(a, b), 2));
    }),
    { seed: 20261125, numRuns: 500 },
  );
});
