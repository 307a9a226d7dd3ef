import { describe, expect, test } from 'vitest';
import { plannedCounts } from '@/lib/domain/germination/bench/planned-counts';

const SCHEDULE = { firstCountOn: '2026-11-05', finalCountOn: '2026-11-14', countEveryDays: 3 };
const states = (countedOn: string[], today: string) =>
  plannedCounts(SCHEDULE, countedOn, today).map(({ on, state }) => `${on.slice(8)} ${state}`);

describe('planned counts', () => {
  test('before anything was counted are coming, due today, or late', () => {
    expect(states([], '2026-11-04')).toEqual(['05 coming', '08 coming', '11 coming', '14 coming']);
    expect(states([], '2026-11-08')).toEqual(['05 late', '08 today', '11 coming', '14 coming']);
    expect(plannedCounts(SCHEDULE, [], '2026-11-08').map(({ daysLate }) => daysLate)).toEqual([3, 0, 0, 0]);
  });

  test('a count between two planned days stands for the one before it, one before the first for the first', () => {
    expect(states(['2026-11-04', '2026-11-10'], '2026-11-10')).toEqual([
      '05 made',
      '08 made',
      '11 coming',
      '14 coming',
    ]);
  });

  test('a day that a later count made up for is no longer late', () => {
    expect(states(['2026-11-11'], '2026-11-12')).toEqual(['05 passed-over', '08 passed-over', '11 made', '14 coming']);
  });

  test('counts after the final day belong to it, and several days are all named', () => {
    const last = plannedCounts(SCHEDULE, ['2026-11-16', '2026-11-14', '2026-11-14'], '2026-11-20').at(-1);
    expect(last).toMatchObject({ final: true, state: 'made', madeOn: ['2026-11-14', '2026-11-16'], daysLate: 0 });
  });
});
