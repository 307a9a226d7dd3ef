import { expect, test } from 'vitest';
import {
  conditionsOf,
  fittedRangeOf,
  lotsOf,
  requireStorageRows,
} from '../../../../lib/domain/longevity/storage-experiment/storage-row';
import { condition } from './simulated-experiments';

const before = { lot: 'B', moisturePercent: null, temperatureC: null, days: 0, sown: 100, germinated: 96 };
const rows = [
  before,
  ...condition(12, 30, [
    [0, 48],
    [20, 40],
  ]),
  ...condition(5, 30, [[200, 40]]),
  ...condition(9, -18, [[900, 47]]),
];

test('conditions are those in which seed was stored, coldest and driest first', () => {
  expect(conditionsOf(rows)).toEqual([
    { moisturePercent: 9, temperatureC: -18 },
    { moisturePercent: 5, temperatureC: 30 },
    { moisturePercent: 12, temperatureC: 30 },
  ]);
  expect(conditionsOf(condition(7, 20, [[0, 48]]))).toEqual([]);
});

test('lots are listed as they come', () => {
  expect(lotsOf(rows)).toEqual(['B', 'A']);
});

test('the range covers what was stored', () => {
  expect(fittedRangeOf(rows)).toEqual({
    ...{ moistureFromPercent: 5, moistureToPercent: 12, temperatureFromC: -18, temperatureToC: 30, longestDays: 900 },
  });
  expect(() => fittedRangeOf([before])).toThrow(RangeError);
});

test('a count before storage needs neither moisture nor temperature; rows without seed are passed over', () => {
  expect(requireStorageRows([before, { ...before, sown: 0, germinated: 0 }])).toEqual([before]);
});
