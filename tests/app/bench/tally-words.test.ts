import fc from 'fast-check';
import { expect, test } from 'vitest';
import { findingInWords, tallyInWords, tallyOf, unreadyInWords } from '@/app/bench/_parts/tally-words';
import { NOTHING_FOUND } from '@/lib/domain/germination/bench/tray-count';
import { benchCount, dishWith } from '@/tests/support/bench-dish';

const TODAY = '2026-11-25';

test('out, today and left are said together', () => {
  const state = dishWith(
    50,
    benchCount('a', '2026-11-23', { normal: 31 }),
    benchCount('b', TODAY, { normal: 3, dead: 1 }),
  );
  expect(tallyInWords(tallyOf([state], TODAY), 'today')).toBe('35 of 50 out, 4 today, 15 left.');
});

test('a dish that was not counted is told from one in which nothing was found', () => {
  const before = benchCount('a', '2026-11-23', { normal: 31 });
  expect(tallyInWords(tallyOf([dishWith(50, before)], TODAY), 'today')).toBe(
    '31 of 50 out, not counted today, 19 left.',
  );
  expect(tallyInWords(tallyOf([dishWith(50, before, benchCount('b', TODAY, {}))], TODAY), 'today')).toBe(
    '31 of 50 out, none today, 19 left.',
  );
});

test('too many is said as too many', () => {
  expect(tallyInWords(tallyOf([dishWith(5, benchCount('a', TODAY, { normal: 7 }))], TODAY), 'today')).toBe(
    '7 of 5 out, 7 today, 2 too many.',
  );
});

test('out and left always add to the seeds set, over any days and dishes', () => {
  const found = fc.record({
    normal: fc.nat(30),
    abnormal: fc.nat(9),
    hard: fc.nat(9),
    fresh: fc.nat(9),
    dead: fc.nat(9),
  });
  fc.assert(
    fc.property(fc.array(found, { maxLength: 5 }), fc.integer({ min: 1, max: 100 }), (days, seeds) => {
      const state = dishWith(seeds, ...days.map((one, index) => benchCount(`c${index}`, `2026-11-2${index}`, one)));
      const tally = tallyOf([state, state], TODAY);
      expect(tally.out + tally.left).toBe(tally.seeds);
    }),
    { seed: 5 },
  );
});

test('a finding of normal seed alone is a number; other classes are named', () => {
  expect(findingInWords({ ...NOTHING_FOUND, normal: 7 })).toBe('7');
  expect(findingInWords(NOTHING_FOUND)).toBe('0');
  expect(findingInWords({ ...NOTHING_FOUND, normal: 5, dead: 2 })).toBe('7 (5 normal, 2 dead)');
});

test('what stands in the way is said with its dish and what to do', () => {
  const on = () => 'today';
  expect(unreadyInWords({ reason: 'not-classed', position: 2, remaining: 1 }, on)).toBe(
    'Dish 2: 1 seed is not classed yet.',
  );
  expect(unreadyInWords({ reason: 'too-many', position: 1, over: 3 }, on)).toBe(
    'Dish 1: 3 too many. Count again, or correct an earlier day.',
  );
  expect(unreadyInWords({ reason: 'disagreement', position: 4, on: TODAY }, on)).toBe(
    'Dish 4: two counts today disagree. Say which holds.',
  );
});
