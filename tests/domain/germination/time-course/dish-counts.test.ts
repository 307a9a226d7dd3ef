import { expect, test } from 'vitest';
import { inspectionDays, seedIntervals } from '../../../../lib/domain/germination/time-course/dish-counts';
import { dish } from './golden-cases';

test('seeds that no line accounts for are still to germinate on the last day their own dish was seen', () => {
  const intervals = seedIntervals([
    dish(10, [
      [3, 4],
      [5, 2],
    ]),
    dish(10, [[3, 1]]),
  ]);
  expect(intervals).toEqual([
    { fromDay: 0, toDay: 3, seeds: 5 },
    { fromDay: 3, toDay: 5, seeds: 2 },
    { fromDay: 3, toDay: Number.POSITIVE_INFINITY, seeds: 9 },
    { fromDay: 5, toDay: Number.POSITIVE_INFINITY, seeds: 4 },
  ]);
});

test('a last stretch without end counts seeds that had not germinated, not seeds that had', () => {
  const spelledOut = {
    seeds: 10,
    inspections: [
      { fromDay: 0, toDay: 3, germinated: 4 },
      { fromDay: 3, toDay: Number.POSITIVE_INFINITY, germinated: 6 },
    ],
  };
  expect(seedIntervals([spelledOut])).toEqual(seedIntervals([dish(10, [[3, 4]])]));
});

test('every inspection day is listed once, also those that found nothing', () => {
  expect(
    inspectionDays([
      dish(5, [
        [2, 0],
        [4, 1],
      ]),
      dish(5, [
        [2, 1],
        [7, 0],
      ]),
    ]),
  ).toEqual([2, 4, 7]);
});

test('refuses counts that cannot be, by name', () => {
  expect(() => seedIntervals([])).toThrow('seedIntervals: dishes must hold at least one dish, got none');
  expect(() => seedIntervals([{ seeds: 5, inspections: [] }])).toThrow('inspections must hold at least one');
  expect(() => seedIntervals([dish(5, [[2, 6]])])).toThrow('must add to at most the 5 seeds set, got 6');
  expect(() => seedIntervals([dish(0, [[2, 0]])])).toThrow('seeds must be a whole number of at least 1, got 0');
  expect(() => seedIntervals([dish(5, [[2, 1.5]])])).toThrow('germinated must be a whole number');
  expect(() => seedIntervals([dish(5, [[0, 1]])])).toThrow('toDay must be after day 0, got 0');
  expect(() => seedIntervals([{ seeds: 5, inspections: [{ fromDay: -1, toDay: 2, germinated: 1 }] }])).toThrow(
    'fromDay must be a day of at least 0, got -1',
  );
  expect(() => seedIntervals([dish(5, [[Number.NaN, 1]])])).toThrow(RangeError);
});
