import { expect, test } from 'vitest';
import { oneAfterTheOther } from '@/lib/domain/germination/bench/one-after-the-other';
import { NOTHING_FOUND } from '@/lib/domain/germination/bench/tray-count';

const count = (id: string, normal: number | null, dead = 0) => ({
  ...{ id, dishId: 'a', on: '2026-11-05', replaces: [] },
  found: normal === null ? null : { ...NOTHING_FOUND, normal, dead },
});

test('counts made one after the other add up, class by class', () => {
  expect(oneAfterTheOther([count('1', 12), count('2', 5, 1)])).toEqual({ ...NOTHING_FOUND, normal: 17, dead: 1 });
});

test('the same count twice is one, and one taken back is none', () => {
  expect(oneAfterTheOther([count('1', 12), count('2', 5), count('3', 12)]).normal).toBe(17);
  expect(oneAfterTheOther([count('1', 12), count('2', null)]).normal).toBe(12);
  expect(oneAfterTheOther([])).toEqual(NOTHING_FOUND);
});
