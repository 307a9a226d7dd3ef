import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromEpochDay, toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { splitStays } from '@/lib/domain/stock/split-stays';
import { storageHistory } from '@/lib/domain/stock/storage-history';

const placement = (storeId: string, from: string) => ({
  storeId,
  from,
  container: 'foil-pouch',
  moisturePercent: 5,
});
const WARM_THEN_COLD = [
  { fromDay: -Infinity, climateId: 'warm' },
  { fromDay: toEpochDay('2024-03-01'), climateId: 'cold' },
];

describe('splitStays', () => {
  it('cuts a stay on the day its store’s climate became another', () => {
    const stays = splitStays(storageHistory([placement('box', '2024-01-01')], '2024-06-01'), () => WARM_THEN_COLD);
    expect(stays.map(({ from, to, days, climateId, storeId }) => [from, to, days, climateId, storeId])).toEqual([
      ['2024-01-01', '2024-03-01', 60, 'warm', 'box'],
      ['2024-03-01', '2024-06-01', 92, 'cold', 'box'],
    ]);
  });

  it('leaves a stay whole that begins on the day of the change, and one that ends on it', () => {
    const after = splitStays(storageHistory([placement('box', '2024-03-01')], '2024-06-01'), () => WARM_THEN_COLD);
    const before = splitStays(storageHistory([placement('box', '2024-01-01')], '2024-03-01'), () => WARM_THEN_COLD);
    expect(after.map(({ climateId }) => climateId)).toEqual(['cold']);
    expect(before.map(({ climateId }) => climateId)).toEqual(['warm']);
  });

  it('keeps a stay of no days, under the climate of its day', () => {
    const stays = splitStays(storageHistory([placement('box', '2024-03-01')], '2024-03-01'), () => WARM_THEN_COLD);
    expect(stays).toMatchObject([{ days: 0, climateId: 'cold', from: '2024-03-01', to: '2024-03-01' }]);
  });

  it('keeps all days, in order, whatever the climates', () => {
    const day = fc.integer({ min: 19000, max: 20000 });
    fc.assert(
      fc.property(
        fc.array(day, { minLength: 1, maxLength: 6 }),
        fc.uniqueArray(day, { maxLength: 6 }),
        (moves, turns) => {
          const placements = [...moves].sort((a, b) => a - b).map((from) => placement('box', fromEpochDay(from)));
          const periods = storageHistory(placements, fromEpochDay(20001));
          const climates = [-Infinity, ...turns.sort((a, b) => a - b)].map((fromDay) => ({
            fromDay,
            climateId: String(fromDay),
          }));
          const stays = splitStays(periods, () => climates);
          expect(stays.reduce((sum, stay) => sum + stay.days, 0)).toBe(20001 - toEpochDay(stays[0]?.from as string));
          stays.slice(1).forEach((stay, index) => {
            expect(stay.from).toBe(stays[index]?.to);
          });
          for (const stay of stays) expect(stay.days).toBe(toEpochDay(stay.to) - toEpochDay(stay.from));
        },
      ),
      { seed: 4, numRuns: 300 },
    );
  });
});
