import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays, daysBetween } from '../../../lib/domain/calendar/calendar-date';
import { type Placement, storageHistory } from '../../../lib/domain/stock/storage-history';

const inPaper = (storeId: string, from: string): Placement => ({
  storeId,
  from,
  container: 'paper-envelope',
  moisturePercent: null,
});

test('a packet stays where it was put until it is put elsewhere, and there until the end', () => {
  const placements: Placement[] = [
    inPaper('seed room', '2020-10-01'),
    { storeId: 'freezer', from: '2021-01-15', container: 'foil-pouch', moisturePercent: 6.2 },
  ];
  expect(storageHistory(placements, '2021-03-01')).toEqual([
    {
      storeId: 'seed room',
      climateId: 'seed room',
      from: '2020-10-01',
      to: '2021-01-15',
      days: 106,
      hermetic: false,
      moisturePercent: null,
    },
    {
      storeId: 'freezer',
      climateId: 'freezer',
      from: '2021-01-15',
      to: '2021-03-01',
      days: 45,
      hermetic: true,
      moisturePercent: 6.2,
    },
  ]);
});

test('a stay that ended on the day it began has zero days', () => {
  const periods = storageHistory([inPaper('a', '2020-10-01'), inPaper('b', '2020-10-01')], '2020-10-01');
  expect(periods.map(({ storeId, days }) => [storeId, days])).toEqual([
    ['a', 0],
    ['b', 0],
  ]);
});

test('periods are contiguous and their days add up to the whole time', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 900 }), { minLength: 1, maxLength: 12 }), (stays) => {
      let day = '2001-05-05';
      const placements = stays.map((days, index) => {
        const placement = inPaper(`store ${index}`, day);
        day = addDays(day, days);
        return placement;
      });
      const periods = storageHistory(placements, day);
      expect(periods.map((period) => period.days)).toEqual(stays);
      expect(periods.reduce((sum, period) => sum + period.days, 0)).toBe(daysBetween('2001-05-05', day));
      for (const [index, period] of periods.entries()) {
        expect(period.to).toBe(periods[index + 1]?.from ?? day);
      }
    }),
    { seed: 20260113 },
  );
});

test('no placements, no history', () => {
  expect(storageHistory([], '2021-03-01')).toEqual([]);
});

test('refuses placements out of order, after the end, in unknown containers or at impossible moistures', () => {
  expect(() => storageHistory([inPaper('a', '2020-10-02'), inPaper('b', '2020-10-01')], '2021-01-01')).toThrow(/order/);
  expect(() => storageHistory([inPaper('a', '2021-01-02')], '2021-01-01')).toThrow(/after the history ends/);
  expect(() => storageHistory([{ ...inPaper('a', '2020-10-01'), container: 'hat' }], '2021-01-01')).toThrow(/hat/);
  expect(() => storageHistory([{ ...inPaper('a', '2020-10-01'), moisturePercent: 0 }], '2021-01-01')).toThrow(
    /moisture/,
  );
});
