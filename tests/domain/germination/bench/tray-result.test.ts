import { describe, expect, test } from 'vitest';
import { dishStates } from '@/lib/domain/germination/bench/dish-state';
import { NOTHING_FOUND } from '@/lib/domain/germination/bench/tray-count';
import { trayResult } from '@/lib/domain/germination/bench/tray-result';

const DISH = { id: 'a', position: 1, seeds: 10 };
const first = { id: '1', dishId: 'a', on: '2026-11-06', found: { ...NOTHING_FOUND, normal: 6 }, replaces: [] };
const last = { id: '2', dishId: 'a', on: '2026-11-15', found: { ...NOTHING_FOUND, normal: 1, dead: 3 }, replaces: [] };

describe('the result of a tray', () => {
  test('adds the days of each dish, and ended on the last day counted', () => {
    expect(trayResult(dishStates([DISH], [last, first]))).toEqual({
      replicates: [{ seeds: 10, normal: 7, abnormal: 0, hard: 0, fresh: 0, dead: 3 }],
      finishedOn: '2026-11-15',
    });
  });

  test('is refused while a seed is not classed, while counts disagree, and for no dish', () => {
    expect(() => trayResult(dishStates([DISH], [first]))).toThrow(/dish 1 is not ready, got not-classed/);
    const other = { ...first, id: '3', found: { ...NOTHING_FOUND, normal: 5 } };
    expect(() => trayResult(dishStates([DISH], [first, last, other]))).toThrow(/got disagreement/);
    expect(() => trayResult([])).toThrow(RangeError);
  });
});
