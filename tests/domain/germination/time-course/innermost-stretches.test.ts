import fc from 'fast-check';
import { expect, test } from 'vitest';
import { seedIntervals } from '../../../../lib/domain/germination/time-course/dish-counts';
import { innermostStretches } from '../../../../lib/domain/germination/time-course/innermost-stretches';
import { anyDishes } from './any-dishes';
import { dish } from './golden-cases';

const INFINITY = Number.POSITIVE_INFINITY;

test('stretches that only touch share nothing', () => {
  const { stretches, observations } = innermostStretches(
    seedIntervals([
      dish(3, [
        [2, 1],
        [4, 1],
      ]),
    ]),
  );
  expect(stretches).toEqual([
    { fromDay: 0, toDay: 2 },
    { fromDay: 2, toDay: 4 },
    { fromDay: 4, toDay: INFINITY },
  ]);
  expect(observations.map(({ first, last }) => [first, last])).toEqual([
    [0, 0],
    [1, 1],
    [2, 2],
  ]);
});

test('where intervals overlap only the part common to most is kept', () => {
  const { stretches } = innermostStretches([
    { fromDay: 0, toDay: 5, seeds: 1 },
    { fromDay: 3, toDay: 8, seeds: 1 },
    { fromDay: 4, toDay: 9, seeds: 1 },
  ]);
  expect(stretches).toEqual([{ fromDay: 4, toDay: 5 }]);
});

test('seeds of a lost dish reach over everything after it, and the rest of them beyond the end', () => {
  const { stretches, observations } = innermostStretches([
    { fromDay: 0, toDay: 3, seeds: 4 },
    { fromDay: 3, toDay: 5, seeds: 2 },
    { fromDay: 3, toDay: INFINITY, seeds: 9 },
    { fromDay: 5, toDay: INFINITY, seeds: 4 },
  ]);
  expect(stretches).toHaveLength(3);
  expect(observations[2]).toEqual({ first: 1, last: 2, seeds: 9 });
});

test('every interval covers a stretch, and stretches follow one another', () => {
  fc.assert(
    fc.property(anyDishes, (dishes) => {
      const { stretches, observations } = innermostStretches(seedIntervals(dishes));
      for (const { first, last } of observations) {
        expect(first).toBeGreaterThanOrEqual(0);
        expect(last).toBeGreaterThanOrEqual(first);
      }
      for (const [i, { fromDay, toDay }] of stretches.entries()) {
        expect(toDay).toBeGreaterThan(fromDay);
        expect(fromDay).toBeGreaterThanOrEqual(stretches[i - 1]?.toDay ?? 0);
      }
    }),
    { seed: 20261125 },
  );
});
