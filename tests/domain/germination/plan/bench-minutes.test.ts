import { expect, test } from 'vitest';
import { benchMinutes } from '@/lib/domain/germination/plan/bench-minutes';

test('more seeds, dishes or counts take longer; the figure is of whole minutes', () => {
  // 3 to begin, 50 x 4 s to lay, 3 counts of 2 dishes, 50 x 2 s to class: 14 minutes
  expect(benchMinutes({ dishes: 2, seeds: 50, counts: 3 })).toBe(14);
  expect(benchMinutes({ dishes: 4, seeds: 200, counts: 3 })).toBe(35);
  expect(() => benchMinutes({ dishes: 0, seeds: 50, counts: 3 })).toThrow(RangeError);
});
