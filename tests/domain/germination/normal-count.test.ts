import { expect, test } from 'vitest';
import { joinIntoHundreds, rangeInPoints, roundedMeanPercent } from '../../../lib/domain/germination/normal-count';

const of = (seeds: number, normals: number[]) => normals.map((normal) => ({ seeds, normal }));

test('the mean is rounded to the nearest whole percent, a half upwards', () => {
  expect(roundedMeanPercent(of(100, [86, 87]))).toBe(87);
  expect(roundedMeanPercent(of(100, [86, 86, 86, 87]))).toBe(86);
  expect(roundedMeanPercent(of(1000, [145]))).toBe(15);
  expect(roundedMeanPercent(of(400, [399]))).toBe(100);
  expect(roundedMeanPercent(of(400, [0]))).toBe(0);
});

test('the range is in points, without rounding dust, and for unequal dishes by percentage', () => {
  expect(rangeInPoints(of(100, [93, 87, 90]))).toBe(6);
  // In doubles 10 of 30 less 7 of 30 is 10.000000000000004 points.
  expect(rangeInPoints(of(30, [10, 7]))).toBe(10);
  expect(
    rangeInPoints([
      { seeds: 20, normal: 19 },
      { seeds: 50, normal: 40 },
    ]),
  ).toBe(15);
  expect(rangeInPoints(of(50, [41]))).toBe(0);
});

test('eight dishes of 50 and sixteen of 25 become four of 100, neighbours together', () => {
  expect(joinIntoHundreds(of(50, [50, 40, 45, 45, 30, 20, 10, 0]))).toEqual(of(100, [90, 90, 50, 10]));
  expect(
    joinIntoHundreds(
      of(
        25,
        Array.from({ length: 16 }, (_, i) => i),
      ),
    ),
  ).toEqual(of(100, [6, 22, 38, 54]));
});

test('any other shape is compared as it was set', () => {
  for (const replicates of [of(50, [40, 41, 42, 43]), of(25, [1, 2, 3, 4]), of(100, [1, 2, 3, 4]), of(200, [1, 2])]) {
    expect(joinIntoHundreds(replicates)).toEqual(replicates);
  }
  const unequal = [...of(50, [1, 2, 3, 4, 5, 6, 7]), { seeds: 51, normal: 3 }];
  expect(joinIntoHundreds(unequal)).toEqual(unequal);
});
