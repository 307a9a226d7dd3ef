import { describe, expect, test } from 'vitest';
import { dishStates } from '@/lib/domain/germination/bench/dish-state';
import { NOTHING_FOUND, type TrayCount } from '@/lib/domain/germination/bench/tray-count';
import { trayCourse } from '@/lib/domain/germination/bench/tray-course';
import type { ClassCounts } from '@/lib/domain/germination/seed-classes';
import { seedIntervals } from '@/lib/domain/germination/time-course/dish-counts';
import { germinationCurve } from '@/lib/domain/germination/time-course/germination-curve';

const SET_ON = '2026-11-01';
const DISHES = [
  { id: 'a', position: 1, seeds: 50 },
  { id: 'b', position: 2, seeds: 50 },
];
let serial = 0;
const count = (dishId: string, day: number, found: Partial<ClassCounts>): TrayCount => {
  serial += 1;
  const on = `2026-11-${String(1 + day).padStart(2, '0')}`;
  return { id: String(serial).padStart(6, '0'), dishId, on, found: { ...NOTHING_FOUND, ...found }, replaces: [] };
};
const courseOf = (counts: TrayCount[]) => trayCourse(dishStates(DISHES, counts), SET_ON);

describe('the time course of a tray', () => {
  test('with all dishes counted on the same days is the running total of normal seedlings over the seeds set', () => {
    const course = courseOf([
      count('a', 5, { normal: 20, abnormal: 2 }),
      count('b', 5, { normal: 15, dead: 1 }),
      count('a', 10, { normal: 18, dead: 10 }),
      count('b', 10, { normal: 25, hard: 9 }),
    ]);
    if (!course.ok) throw new Error(course.reason);
    expect(course.lastCountedOn).toBe('2026-11-11');
    const curve = germinationCurve(course.dishes);
    if (!curve.ok) throw new Error(curve.reason);
    expect(curve.points.map(({ day, germinated }) => [day, Math.round(germinated * 1e12) / 1e12])).toEqual([
      [0, 0],
      [5, 0.35],
      [10, 0.78],
    ]);
    // Nobody was lost from view, so every seed speaks to the end.
    expect(curve.final.effectiveSeeds).toBeCloseTo(100, 9);
  });

  test('a dish that is empty before the last count has not been lost: its dead seed never germinates', () => {
    const course = courseOf([
      count('a', 5, { normal: 40, dead: 10 }),
      count('b', 5, { normal: 20 }),
      count('b', 10, { normal: 20, dead: 10 }),
    ]);
    if (!course.ok) throw new Error(course.reason);
    const curve = germinationCurve(course.dishes);
    expect(curve.ok && curve.final.germinated).toBeCloseTo(0.8, 12);
  });

  test('seed still lying in a dish that was not looked at lately is known only until it was', () => {
    const course = courseOf([
      count('a', 5, { normal: 20, dead: 5 }),
      count('b', 5, { normal: 20 }),
      count('b', 10, { normal: 10 }),
    ]);
    if (!course.ok) throw new Error(course.reason);
    expect(seedIntervals(course.dishes)).toEqual([
      { fromDay: 0, toDay: 5, seeds: 40 },
      { fromDay: 5, toDay: 10, seeds: 10 },
      { fromDay: 5, toDay: Number.POSITIVE_INFINITY, seeds: 25 },
      { fromDay: 10, toDay: Number.POSITIVE_INFINITY, seeds: 25 },
    ]);
  });

  test('a dish that nobody looked at is left out', () => {
    const course = courseOf([count('a', 5, { normal: 20 })]);
    expect(course.ok && course.dishes.map(({ seeds }) => seeds)).toEqual([50]);
  });

  test('says why there is none: nothing counted, more counted than set, a seedling on the day of setting', () => {
    expect(courseOf([])).toEqual({ ok: false, reason: 'nothing-counted' });
    expect(courseOf([count('a', 0, { dead: 1 })])).toEqual({ ok: false, reason: 'nothing-counted' });
    expect(courseOf([count('a', 5, { normal: 51 })])).toEqual({ ok: false, reason: 'too-many' });
    expect(courseOf([count('a', 0, { normal: 1 }), count('a', 5, { normal: 3 })])).toEqual({
      ok: false,
      reason: 'found-too-early',
    });
    // Rotten seed thrown out on the first day is no seedling.
    expect(courseOf([count('a', 0, { dead: 1 }), count('a', 5, { normal: 3 })]).ok).toBe(true);
  });
});
