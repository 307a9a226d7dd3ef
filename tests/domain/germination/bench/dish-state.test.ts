import { describe, expect, it } from 'vitest';
import { dishStates, lastCountedOn, unready } from '@/lib/domain/germination/bench/dish-state';
import { NOTHING_FOUND, type TrayCount } from '@/lib/domain/germination/bench/tray-count';
import type { ClassCounts } from '@/lib/domain/germination/seed-classes';

const dishes = [
  { id: 'one', position: 1, seeds: 25 },
  { id: 'two', position: 2, seeds: 25 },
];
let made = 0;
function newId(): string {
  made += 1;
  return `id-${String(made).padStart(4, '0')}`;
}
const count = (dishId: string, on: string, found: Partial<ClassCounts> | null): TrayCount => ({
  id: newId(),
  dishId,
  on,
  found: found === null ? null : { ...NOTHING_FOUND, ...found },
  replaces: [],
});

describe('a dish as it stands', () => {
  it('the days add up, and what was not found still lies there', () => {
    const [one, two] = dishStates(dishes, [
      count('one', '2026-11-28', { normal: 10 }),
      count('one', '2026-11-30', { normal: 5, dead: 2 }),
    ]);
    expect(one).toMatchObject({ totals: { normal: 15, dead: 2 }, remaining: 8 });
    expect(one?.days.map((day) => day.on)).toEqual(['2026-11-28', '2026-11-30']);
    expect(two).toMatchObject({ remaining: 25, days: [] });
  });

  it('a day taken back counts for nothing', () => {
    const first = count('one', '2026-11-28', { normal: 10 });
    const back = { ...count('one', '2026-11-28', null), replaces: [first.id] };
    expect(dishStates(dishes, [first, back])[0]).toMatchObject({ remaining: 25, days: [] });
  });

  it('more than was set leaves less than nothing, which is said', () => {
    const states = dishStates(dishes, [
      count('one', '2026-11-28', { normal: 20 }),
      count('one', '2026-11-29', { normal: 7 }),
    ]);
    expect(states[0]?.remaining).toBe(-2);
    expect(unready(states)[0]).toEqual({ reason: 'too-many', position: 1, over: 2 });
  });
});

describe('what stands in the way of closing', () => {
  it('seed not yet classed, dish by dish', () => {
    expect(unready(dishStates(dishes, [count('one', '2026-12-05', { normal: 20, dead: 5 })]))).toEqual([
      { reason: 'not-classed', position: 2, remaining: 25 },
    ]);
  });

  it('nothing, when every seed has its class', () => {
    const counts = [
      count('one', '2026-12-05', { normal: 20, dead: 5 }),
      count('two', '2026-12-05', { normal: 18, abnormal: 1, hard: 1, fresh: 2, dead: 3 }),
    ];
    expect(unready(dishStates(dishes, counts))).toEqual([]);
  });

  it('a day that two phones wrote down differently, even when the rest adds up', () => {
    const counts = [
      count('one', '2026-12-05', { normal: 20, dead: 5 }),
      count('one', '2026-12-05', { normal: 25 }),
      count('two', '2026-12-05', { dead: 25 }),
    ];
    expect(unready(dishStates(dishes, counts))).toEqual([{ reason: 'disagreement', position: 1, on: '2026-12-05' }]);
  });
});

describe('the last day on which the whole tray was looked at', () => {
  it('is none while a dish was never counted', () => {
    expect(lastCountedOn(dishStates(dishes, [count('one', '2026-11-28', { normal: 1 })]))).toBeNull();
  });

  it('is that of the dish looked at longest ago', () => {
    const counts = [
      count('one', '2026-11-28', { normal: 1 }),
      count('one', '2026-11-30', {}),
      count('two', '2026-11-29', {}),
    ];
    expect(lastCountedOn(dishStates(dishes, counts))).toBe('2026-11-29');
  });

  it('does not wait for a dish in which nothing is left', () => {
    const emptied = count('one', '2026-11-28', { normal: 25 });
    const partly = count('two', '2026-11-30', { normal: 3 });
    expect(lastCountedOn(dishStates(dishes, [emptied, partly]))).toBe('2026-11-30');
    const rest = count('two', '2026-12-02', { normal: 2, dead: 20 });
    expect(lastCountedOn(dishStates(dishes, [emptied, partly, rest]))).toBe('2026-11-28');
  });
});
