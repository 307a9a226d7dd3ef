import { expect, test } from 'vitest';
import {
  classesOffered,
  findingOf,
  strokeMark,
  typedOn,
  withNumber,
  withStroke,
} from '@/app/bench/_parts/change-count';
import { seedsInDish } from '@/app/bench/_parts/seeds-in-dish';
import { NOTHING_FOUND } from '@/lib/domain/germination/bench/tray-count';
import { benchCount, dishWith } from '@/tests/support/bench-dish';

const TODAY = '2026-11-25';

test('a tap finds a seed, puts back one of the same class, and classes anew one of another', () => {
  expect(strokeMark('left', 'normal')).toBe('normal');
  expect(strokeMark('normal', 'normal')).toBe('left');
  expect(strokeMark('normal', 'dead')).toBe('dead');
});

test('an emptied place and no place at all cannot be tapped', () => {
  expect(strokeMark('gone', 'normal')).toBeNull();
  expect(strokeMark(undefined, 'normal')).toBeNull();
});

test('a swipe does the same to every seed on its way and leaves emptied places alone', () => {
  expect(withStroke(['left', 'gone', 'normal', 'left'], new Set([0, 1, 2]), 'normal')).toEqual([
    'normal',
    'gone',
    'normal',
    'left',
  ]);
  expect(withStroke(['normal', 'gone', 'dead'], new Set([0, 1]), 'left')).toEqual(['left', 'gone', 'dead']);
});

test('of seeds that were only counted, the one that is tapped comes back and no other', () => {
  const drawn = seedsInDish(dishWith(6, benchCount('a', TODAY, { normal: 3 })), TODAY);
  expect(drawn).toEqual(['normal', 'normal', 'normal', 'left', 'left', 'left']);
  const finding = findingOf(withStroke(drawn, new Set([1]), 'left'));
  expect(finding).toEqual({ found: { ...NOTHING_FOUND, normal: 2 }, places: { normal: [0, 2] } });
  const after = seedsInDish(dishWith(6, benchCount('b', TODAY, finding.found, { places: finding.places })), TODAY);
  expect(after).toEqual(['normal', 'left', 'normal', 'left', 'left', 'left']);
});

test('emptied places are not found again on the day that is looked at', () => {
  expect(findingOf(['gone', 'left', 'abnormal'])).toEqual({
    found: { ...NOTHING_FOUND, abnormal: 1 },
    places: { abnormal: [2] },
  });
});

test('fewer of a class puts back the seeds tapped last; other classes keep theirs', () => {
  const before = { found: { ...NOTHING_FOUND, normal: 3, dead: 1 }, places: { normal: [4, 8, 2], dead: [0] } };
  expect(withNumber(before, 'normal', 1)).toEqual({
    found: { ...NOTHING_FOUND, normal: 1, dead: 1 },
    places: { normal: [4], dead: [0] },
  });
  expect(withNumber(before, 'normal', 5).places).toEqual(before.places);
});

test('the first digit begins anew, further ones are added, zeros in front fall away', () => {
  expect(typedOn('', '4')).toBe('4');
  expect(typedOn('4', '0')).toBe('40');
  expect(typedOn('0', '7')).toBe('7');
});

test('before the final count three classes are offered, and any other that was found', () => {
  expect(classesOffered(false, false, NOTHING_FOUND)).toEqual(['normal', 'abnormal', 'dead']);
  expect(classesOffered(false, false, { ...NOTHING_FOUND, fresh: 1 })).toEqual(['normal', 'abnormal', 'fresh', 'dead']);
});

test('at the final count all five are offered; hard seed comes first after normal where the crop has it', () => {
  expect(classesOffered(true, false, null)).toEqual(['normal', 'abnormal', 'hard', 'fresh', 'dead']);
  expect(classesOffered(true, true, null)).toEqual(['normal', 'hard', 'abnormal', 'fresh', 'dead']);
});
