import { describe, expect, test } from 'vitest';
import {
  plannedInWords,
  soFarInWords,
  unreadyInWords,
  unseenInWords,
} from '@/app/(bank)/germination/[number]/_parts/tray-words';
import { dishStates } from '@/lib/domain/germination/bench/dish-state';
import { NOTHING_FOUND } from '@/lib/domain/germination/bench/tray-count';

const states = (normal: number, dead: number) =>
  dishStates(
    [{ id: 'a', position: 1, seeds: 50 }],
    normal + dead === 0
      ? []
      : [{ id: '1', dishId: 'a', on: '2026-11-20', found: { ...NOTHING_FOUND, normal, dead }, replaces: [] }],
  );

describe('a tray under way', () => {
  test('says what came up and between which figures it will end', () => {
    expect(soFarInWords(states(0, 0))).toBe('**50 seeds are set**, and nothing was counted yet.');
    expect(soFarInWords(states(30, 4))).toBe(
      'So far **30 of 50 seeds** gave normal seedlings; 16 still lie there. Whatever they do, it ends between 60 and 92 in 100.',
    );
    expect(soFarInWords(states(30, 19))).toMatch(/1 still lies there/);
    expect(soFarInWords(states(30, 20))).toBe('**30 of 50 seeds** gave normal seedlings, and every seed is classed.');
  });

  test('says what stands in the way of closing it', () => {
    expect(unreadyInWords({ reason: 'not-classed', position: 2, remaining: 1 })).toBe(
      'Dish 2: 1 seed is not classed yet.',
    );
    expect(unreadyInWords({ reason: 'too-many', position: 1, over: 3 })).toMatch(/3 more seeds were counted than set/);
    expect(unreadyInWords({ reason: 'disagreement', position: 1, on: '2026-11-20' })).toMatch(/20 Nov 2026 disagree/);
  });

  test('says what became of each planned count', () => {
    const planned = { on: '2026-11-20', final: false, madeOn: [], daysLate: 0 };
    expect(plannedInWords({ ...planned, state: 'made', madeOn: ['2026-11-20'] })).toBe('counted');
    expect(plannedInWords({ ...planned, state: 'made', madeOn: ['2026-11-21'] })).toBe('counted on 21 Nov 2026');
    expect(plannedInWords({ ...planned, state: 'late', daysLate: 1 })).toBe('1 day late');
    expect(plannedInWords({ ...planned, state: 'coming' })).toBe('to come');
  });

  test('names the dishes that say nothing yet', () => {
    expect(unseenInWords([4])).toBe('Dish 4 has not been looked at and is left out.');
    expect(unseenInWords([2, 3, 4])).toBe('Dishes 2, 3 and 4 have not been looked at and are left out.');
  });
});
