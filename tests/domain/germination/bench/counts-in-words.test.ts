import { expect, test } from 'vitest';
import { countsInWords } from '@/lib/domain/germination/bench/counts-in-words';
import { NOTHING_FOUND } from '@/lib/domain/germination/bench/tray-count';

test('a count in words names the classes that were found, in the order of a test sheet', () => {
  expect(countsInWords({ ...NOTHING_FOUND, dead: 1, normal: 12 })).toBe('12 normal, 1 dead');
  expect(countsInWords(NOTHING_FOUND)).toBe('nothing');
  expect(countsInWords(null)).toBe('taken back');
});
