import { describe, expect, test } from 'vitest';
import { seedsFound } from '@/lib/domain/germination/bench/tray-count';
import { drawCourse } from '@/seed-demo/generators/germination-course';
import { randomFor } from '@/seed-demo/random';

const OUTCOME = { seeds: 1000, normal: 800, abnormal: 50, hard: 30, fresh: 20, dead: 100 };
const course = (countedOnDays: number[], closed: boolean, name = 'a dish') =>
  drawCourse({ outcome: OUTCOME, countedOnDays, mostByDay: 6, closed, random: randomFor(name) });

describe('the course of a dish', () => {
  test('of a closed test adds to its outcome, class by class', () => {
    const days = course([4, 7, 10], true);
    for (const seedClass of ['normal', 'abnormal', 'hard', 'fresh', 'dead'] as const) {
      expect(
        days.reduce((sum, day) => sum + day[seedClass], 0),
        seedClass,
      ).toBe(OUTCOME[seedClass]);
    }
  });

  test('of an open one leaves what has not come up, and says nothing yet of hard, fresh and most dead seed', () => {
    const [first] = course([6], false);
    if (!first) throw new Error('nothing was counted');
    expect(first).toMatchObject({ hard: 0, fresh: 0 });
    expect(first.dead).toBeLessThan(60);
    expect(seedsFound(first)).toBeLessThan(OUTCOME.seeds);
  });

  test('has about two thirds of the seedlings by the day on which most are up, and none right away', () => {
    const [early, most] = course([1, 6], false);
    expect(early?.normal).toBe(0);
    expect(most?.normal ?? 0).toBeGreaterThan(0.6 * OUTCOME.normal);
    expect(most?.normal ?? 0).toBeLessThan(0.75 * OUTCOME.normal);
  });

  test('is the same for the same name', () => {
    expect(course([4, 7], true)).toEqual(course([4, 7], true));
    expect(course([4, 7], true)).not.toEqual(course([4, 7], true, 'another dish'));
  });
});
