import { describe, expect, it } from 'vitest';
import { cautionsInWords, courseInWords, dayRange, formatDays } from '@/app/_components/time-course/course-words';
import { summariseTimeCourse } from '../../../../lib/domain/germination/time-course/summarise-time-course';
import { dish } from '../../../domain/germination/time-course/golden-cases';

function course(...dishes: Parameters<typeof summariseTimeCourse>[0]) {
  const found = summariseTimeCourse(dishes);
  if (!found.ok) throw new Error(found.reason);
  return found;
}

const COUNTS = [
  [4, 8],
  [5, 42],
  [6, 69],
  [7, 35],
  [8, 17],
  [10, 10],
  [14, 2],
] as const;

describe('a time course in a sentence', () => {
  it('gives the half time with its range, then how far and what that says of the lot', () => {
    expect(courseInWords(course(dish(200, COUNTS)))).toBe(
      'Half of the seeds that germinated did so by **day 5.6** (5.4–5.8); **92 %** germinated by day 14, likely between 87 % and 95 % of the lot.',
    );
  });

  it('claims no half time within the one stretch in which all germinated', () => {
    const words = courseInWords(
      course(
        dish(25, [
          [3, 0],
          [5, 25],
          [7, 0],
        ]),
      ),
    );
    expect(words).toMatch(/^All seed that germinated did so \*\*between day 3 and day 5\*\*; \*\*100 %\*\*/);
  });

  it('says what none of some seeds still allows', () => {
    expect(courseInWords(course(dish(50, [[7, 0]])))).toBe(
      'None of 50 seeds germinated by day 7: likely between 0 % and 7 % of the lot would have.',
    );
  });
});

describe('what speaks against the figures is said', () => {
  it('nothing, where nothing does', () => {
    expect(cautionsInWords(course(dish(200, COUNTS)))).toEqual([]);
  });

  it('a test that ended too early, dishes that differ, a curve that cannot follow', () => {
    expect(
      cautionsInWords(
        course(
          dish(50, [
            [3, 5],
            [5, 9],
            [7, 12],
          ]),
        ),
      )[0],
    ).toContain('still germinating');
    expect(
      cautionsInWords(
        course(
          dish(50, [
            [3, 15],
            [5, 33],
            [7, 0],
          ]),
          dish(50, [
            [3, 5],
            [5, 9],
            [7, 0],
          ]),
        ),
      )[0],
    ).toContain('differ more than chance makes them (under 1 in 100)');
    expect(
      cautionsInWords(
        course(
          dish(40, [
            [2, 0],
            [3, 8],
            [4, 0],
            [5, 0],
            [6, 18],
            [7, 14],
          ]),
        ),
      ).join(),
    ).toContain('trust the counted stairs');
    expect(
      cautionsInWords(
        course(
          dish(50, [
            [3, 20],
            [5, 22],
            [7, 0],
          ]),
        ),
      )[0],
    ).toContain('a curve needs at least three');
  });
});

it('writes days as exactly as counts can carry', () => {
  expect([4.234, 5, 196.05, 0.8333].map(formatDays)).toEqual(['4.2', '5', '196', '0.83']);
});

it('says in words where a range is open', () => {
  expect(dayRange({ lower: 3.91, upper: 4.48 })).toBe('3.9–4.5');
  expect(dayRange({ lower: 3.91, upper: null })).toBe('not before day 3.9');
  expect(dayRange({ lower: null, upper: null })).toBe('too few seeds to say how sure');
});
