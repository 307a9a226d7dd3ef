import { describe, expect, it } from 'vitest';
import { daysInside } from '@/lib/domain/stock/days-inside';
import type { StorePhase } from '@/lib/domain/stock/store-phases';

const AT_4 = { temperatureC: 4, relativeHumidity: null };
const phase = (storeId: string, fromDay: number, parentId: string | null): StorePhase => ({
  storeId,
  fromDay,
  parentId,
  target: parentId === null ? AT_4 : null,
});
const PHASES: Record<string, StorePhase[]> = {
  fridge: [phase('fridge', -Infinity, null)],
  freezer: [phase('freezer', -Infinity, null)],
  shelf: [phase('shelf', -Infinity, 'fridge'), phase('shelf', 300, 'freezer')],
  // On the shelf from day 100, out of it from 200, on it again from 250.
  box: [phase('box', -Infinity, null), phase('box', 100, 'shelf'), phase('box', 200, null), phase('box', 250, 'shelf')],
  restless: [phase('restless', -Infinity, 'fridge'), phase('restless', 50, 'shelf')],
};
const inside = (id: string, around: string) => daysInside(id, around, (store) => PHASES[store] ?? []);

describe('when a store stood inside another', () => {
  it('is all time for itself, and never for one that it never entered', () => {
    expect(inside('fridge', 'fridge')).toEqual([{ fromDay: -Infinity, toDay: Infinity }]);
    expect(inside('fridge', 'freezer')).toEqual([]);
  });

  it('follows the stores between: a box leaves the fridge when its shelf does', () => {
    expect(inside('box', 'fridge')).toEqual([
      { fromDay: 100, toDay: 200 },
      { fromDay: 250, toDay: 300 },
    ]);
    expect(inside('box', 'freezer')).toEqual([{ fromDay: 300, toDay: Infinity }]);
  });

  it('does not end where it only went to another place in the same store', () => {
    expect(inside('restless', 'fridge')).toEqual([{ fromDay: -Infinity, toDay: 300 }]);
  });

  it('ends at a circle that nobody can have meant', () => {
    const round: Record<string, StorePhase[]> = {
      a: [phase('a', -Infinity, 'b')],
      b: [phase('b', -Infinity, 'a')],
    };
    expect(daysInside('a', 'fridge', (store) => round[store] ?? [])).toEqual([]);
  });
});
