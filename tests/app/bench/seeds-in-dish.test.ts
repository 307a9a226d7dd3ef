import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type SeedMark, seedsInDish } from '@/app/bench/_parts/seeds-in-dish';
import { SEED_CLASSES } from '@/lib/domain/germination/seed-classes';
import { benchCount, dishWith } from '@/tests/support/bench-dish';

const TODAY = '2026-11-25';
const counted = (marks: SeedMark[], mark: SeedMark) => marks.filter((one) => one === mark).length;

test('a seed that was tapped is marked where it lay, and places of other days are empty', () => {
  const marks = seedsInDish(
    dishWith(
      6,
      benchCount('a', '2026-11-23', { normal: 2 }, { places: { normal: [0, 4] } }),
      benchCount('b', TODAY, { normal: 1, dead: 1 }, { places: { normal: [2], dead: [5] } }),
    ),
    TODAY,
  );
  expect(marks).toEqual(['gone', 'left', 'normal', 'left', 'gone', 'dead']);
});

test('seeds that were only counted take the next places, round those that were tapped', () => {
  const marks = seedsInDish(dishWith(5, benchCount('a', TODAY, { normal: 3 }, { places: { normal: [1] } })), TODAY);
  expect(marks).toEqual(['normal', 'normal', 'normal', 'left', 'left']);
});

test('what was found after the day being looked at is out of the dish as well', () => {
  const state = dishWith(4, benchCount('a', '2026-11-23', { normal: 1 }), benchCount('b', TODAY, { normal: 2 }));
  const marks = seedsInDish(state, '2026-11-23');
  expect(counted(marks, 'normal')).toBe(1);
  expect(counted(marks, 'gone')).toBe(2);
  expect(counted(marks, 'left')).toBe(1);
});

test('whatever the places say, as many seeds are drawn as were counted', () => {
  const places = fc.array(fc.integer({ min: -2, max: 60 }), { maxLength: 12 });
  const found = fc.integer({ min: 0, max: 12 });
  fc.assert(
    fc.property(found, found, found, places, places, places, (early, normal, dead, one, two, three) => {
      const marks = seedsInDish(
        dishWith(
          50,
          benchCount('a', '2026-11-23', { normal: early }, { places: { normal: one } }),
          benchCount('b', TODAY, { normal, dead }, { places: { normal: two, dead: three } }),
        ),
        TODAY,
      );
      expect(marks).toHaveLength(50);
      expect(counted(marks, 'gone')).toBe(early);
      for (const seedClass of SEED_CLASSES) {
        expect(counted(marks, seedClass)).toBe({ normal, dead, abnormal: 0, hard: 0, fresh: 0 }[seedClass]);
      }
    }),
    { seed: 5 },
  );
});

test('a dish with more counted than set is drawn full, not longer', () => {
  expect(seedsInDish(dishWith(3, benchCount('a', TODAY, { normal: 5 })), TODAY)).toEqual([
    'normal',
    'normal',
    'normal',
  ]);
});
