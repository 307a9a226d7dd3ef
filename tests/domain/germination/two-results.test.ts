import { describe, expect, test } from 'vitest';
import { compareTwoResults } from '../../../lib/domain/germination/two-results';

const of400 = (first: number, second: number) =>
  compareTwoResults({ germinated: first, seeds: 400 }, { germinated: second, seeds: 400 });

describe('tests of 400 seeds have the published tolerance, by the mean of the two', () => {
  // 7 CFR 201.63: 96 or over 5; 90 to under 96 6; 80 to under 90 7; 70 to under 80 8; 60 to under 70 9; under 60 10.
  test.each([
    [400, 400, 5],
    [384, 384, 5],
    [384, 383, 6],
    [360, 360, 6],
    [360, 359, 7],
    [320, 320, 7],
    [320, 319, 8],
    [280, 280, 8],
    [280, 279, 9],
    [240, 240, 9],
    [240, 239, 10],
    [0, 0, 10],
  ])('%i and %i of 400: %i points', (first, second, tolerance) => {
    expect(of400(first, second)).toMatchObject({ tolerance, basis: 'published' });
    expect(of400(second, first).tolerance).toBe(tolerance);
  });

  test('a difference equal to the tolerance is compatible, a quarter point more is not', () => {
    // Mean 85-86 %: 7 points are 28 seeds of 400.
    expect(of400(356, 328)).toMatchObject({ difference: 7, tolerance: 7, compatible: true });
    expect(of400(357, 328)).toMatchObject({ difference: 7.25, tolerance: 7, compatible: false });
  });

  test('the larger share may stand first or second', () => {
    expect(of400(300, 360)).toMatchObject({ difference: 15, compatible: false });
    expect(of400(360, 300)).toMatchObject({ difference: 15, compatible: false });
  });
});

test('a test of 200 to 399 seeds gets 2 points more', () => {
  const both = (seeds: number) =>
    compareTwoResults({ germinated: 0.85 * seeds, seeds }, { germinated: 340, seeds: 400 });
  expect(both(200)).toMatchObject({ tolerance: 9, basis: 'published' });
  expect(both(300)).toMatchObject({ tolerance: 9, basis: 'published' });
  expect(both(400)).toMatchObject({ tolerance: 7, basis: 'published' });
});

test('rounding dust of odd test sizes does not tip a difference on the line over it', () => {
  // 119 of 210 and 203 of 300 are 11 points apart, in doubles 11.000000000000007; mean 62 %: 9 + 2 points.
  expect(compareTwoResults({ germinated: 119, seeds: 210 }, { germinated: 203, seeds: 300 })).toMatchObject({
    difference: 11,
    tolerance: 11,
    compatible: true,
  });
});

test('below 200 seeds there is no published tolerance, and the exact test decides', () => {
  const against400 = (seeds: number) =>
    compareTwoResults({ germinated: 0.9 * seeds, seeds }, { germinated: 360, seeds: 400 }).tolerance;
  expect(against400(200)).toBe(8);
  expect(against400(190)).toBeNull();
  // R fisher.test: 45 and 38 of 50 give p = 0.10837; 10 and 0 of 10 give 1.0825e-5.
  const close = compareTwoResults({ germinated: 45, seeds: 50 }, { germinated: 38, seeds: 50 });
  expect(close).toMatchObject({ tolerance: null, basis: 'exact-test', compatible: true });
  expect(close.pValue).toBeCloseTo(0.1083695841, 9);
  const apart = compareTwoResults({ germinated: 10, seeds: 10 }, { germinated: 0, seeds: 10 });
  expect(apart).toMatchObject({ tolerance: null, basis: 'exact-test', compatible: false });
  expect(apart.pValue).toBeCloseTo(1.0825e-5, 8);
});

test('the exact p-value stands beside the published tolerance', () => {
  // R fisher.test(360, 340 of 400): 0.0418: within the tolerance of 7 points, though unlikely by chance alone.
  const found = of400(360, 340);
  expect(found).toMatchObject({ difference: 5, compatible: true });
  expect(found.pValue).toBeCloseTo(0.041822, 6);
});

test('refuses what is no count', () => {
  const good = { germinated: 1, seeds: 2 };
  for (const bad of [
    { germinated: 3, seeds: 2 },
    { germinated: 0, seeds: 0 },
    { germinated: -1, seeds: 2 },
    { germinated: 0.5, seeds: 2 },
  ]) {
    expect(() => compareTwoResults(bad, good)).toThrow(RangeError);
    expect(() => compareTwoResults(good, bad)).toThrow(RangeError);
  }
});
