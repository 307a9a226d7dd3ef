import { describe, expect, test } from 'vitest';
import { summariseTest } from '../../../lib/domain/germination/result';
import type { ClassedReplicate } from '../../../lib/domain/germination/seed-classes';
import { binomialInterval } from '../../../lib/domain/statistics/binomial-interval';
import { dish, dishes } from './classed-replicate';

const okra = [
  dish(100, { normal: 84, abnormal: 4, hard: 6, fresh: 2 }),
  dish(100, { normal: 88, abnormal: 2, hard: 5 }),
  dish(100, { normal: 82, abnormal: 5, hard: 8, fresh: 1 }),
  dish(100, { normal: 86, abnormal: 3, hard: 7 }),
];

describe('what a test says about the lot', () => {
  test('germination is the normal fraction, with its Wilson interval', () => {
    const { germination } = summariseTest({ replicates: okra });
    expect(germination.proportion).toBe(340 / 400);
    expect(germination.interval).toEqual(binomialInterval({ successes: 340, trials: 400 }));
    // Worked out with R prop.test(340, 400, correct = FALSE), ten decimals.
    expect(germination.interval.lower).toBeCloseTo(0.8116863893, 9);
    expect(germination.interval.upper).toBeCloseTo(0.8816550047, 9);
  });

  test('viability adds hard and fresh seed, not abnormal', () => {
    const { viability } = summariseTest({ replicates: okra });
    expect(viability.proportion).toBe((340 + 26 + 3) / 400);
    expect(viability.interval).toEqual(binomialInterval({ successes: 369, trials: 400 }));
  });

  test('the level is that asked for', () => {
    const summary = summariseTest({ replicates: okra, level: 0.8 });
    expect(summary.germination.interval).toEqual(binomialInterval({ successes: 340, trials: 400, level: 0.8 }));
    expect(summary.viability.interval.level).toBe(0.8);
  });

  test('percentages are whole and add to 100', () => {
    const { roundedPercentages, totals } = summariseTest({ replicates: okra });
    expect(totals).toEqual({ normal: 340, abnormal: 14, hard: 26, fresh: 3, dead: 17 });
    // 85, 3.5, 6.5, 0.75, 4.25: 2 points are missing, for fresh (.75) and then abnormal (.5, before hard).
    expect(roundedPercentages).toEqual({ normal: 85, abnormal: 4, hard: 6, fresh: 1, dead: 4 });
  });

  test('dishes of unequal size count by their seeds', () => {
    const summary = summariseTest({ replicates: [dish(10, { normal: 10 }), dish(90, { normal: 45 })] });
    expect(summary.germination.proportion).toBe(0.55);
  });
});

describe('whether it can be believed', () => {
  test('the published range at the rounded mean, itself included', () => {
    // Mean 85: 14 points (7 CFR 201.55).
    const at = summariseTest({ replicates: dishes(100, [78, 92, 85, 85]) });
    expect(at).toMatchObject({
      rangeBetweenReplicates: 14,
      toleratedRange: 14,
      toleranceBasis: 'published',
      toleranceRefusal: null,
      withinTolerance: true,
    });
    const over = summariseTest({ replicates: dishes(100, [78, 93, 85, 84]) });
    expect(over).toMatchObject({ rangeBetweenReplicates: 15, toleratedRange: 14, withinTolerance: false });
  });

  test('only normal seedlings count for the range', () => {
    const summary = summariseTest({ replicates: [dish(100, { normal: 80, hard: 15 }), dish(100, { normal: 95 })] });
    expect(summary.rangeBetweenReplicates).toBe(15);
  });

  test('eight dishes of 50 are joined into four of 100 for the range, and stay eight for the chi-square', () => {
    const summary = summariseTest({ replicates: dishes(50, [45, 40, 43, 42, 44, 41, 42, 43]) });
    expect(summary).toMatchObject({
      replicateCount: 8,
      comparedReplicates: 4,
      rangeBetweenReplicates: 0,
      toleratedRange: 14,
      toleranceBasis: 'published',
    });
    expect(summary.heterogeneity?.degreesOfFreedom).toBe(7);
  });

  test('other shapes have a derived range', () => {
    const summary = summariseTest({ replicates: dishes(25, [20, 21, 23, 22]) });
    expect(summary).toMatchObject({ rangeBetweenReplicates: 12, toleranceBasis: 'derived', withinTolerance: true });
  });

  test('one replicate or tiny ones: no judgement, and why', () => {
    const one = summariseTest({ replicates: dishes(100, [90]) });
    expect(one).toMatchObject({
      rangeBetweenReplicates: null,
      toleratedRange: null,
      toleranceBasis: null,
      toleranceRefusal: 'one-replicate',
      withinTolerance: null,
      heterogeneity: null,
    });
    const tiny = summariseTest({ replicates: dishes(5, [5, 1]) });
    expect(tiny).toMatchObject({
      rangeBetweenReplicates: 80,
      toleratedRange: null,
      toleranceRefusal: 'too-few-seeds',
      withinTolerance: null,
    });
  });

  test('dishes that differ by more than chance show it', () => {
    const { heterogeneity } = summariseTest({ replicates: dishes(100, [90, 60, 94, 75]) });
    expect(heterogeneity?.pValue).toBeLessThan(1e-8);
    expect(heterogeneity?.intraReplicateCorrelation).toBeGreaterThan(0.1);
  });
});

test('nothing is NaN at the ends: one seed, none of n, all of n', () => {
  for (const replicates of [
    dishes(1, [0]),
    dishes(1, [1]),
    dishes(1, [1, 0]),
    dishes(100, [0, 0, 0, 0]),
    dishes(100, [100, 100, 100, 100]),
    dishes(50, [0, 0]),
  ]) {
    const summary = summariseTest({ replicates });
    const numbers = (value: unknown): number[] =>
      typeof value === 'number'
        ? [value]
        : value && typeof value === 'object'
          ? Object.values(value).flatMap(numbers)
          : [];
    for (const number of numbers(summary)) expect(number, JSON.stringify(summary)).not.toBeNaN();
  }
  expect(summariseTest({ replicates: dishes(100, [100, 100, 100, 100]) }).withinTolerance).toBe(true);
});

describe('refuses by replicate and class', () => {
  const refused = (replicate: Partial<ClassedReplicate>, message: string) =>
    expect(() =>
      summariseTest({ replicates: [okra[0] ?? dish(1, {}), { ...dish(50, { normal: 40 }), ...replicate }] }),
    ).toThrow(new RangeError(`summariseTest: replicate 2: ${message}`));

  test('counts that are negative, broken or missing', () => {
    refused({ abnormal: -1 }, 'abnormal must be a whole number of at least 0, got -1');
    refused({ normal: 40.5 }, 'normal must be a whole number of at least 0, got 40.5');
    refused({ fresh: undefined as unknown as number }, 'fresh must be a whole number of at least 0, got undefined');
    refused({ seeds: 0 }, 'seeds must be a whole number of at least 1, got 0');
  });

  test('classes that do not add to the seeds, on either side', () => {
    refused({ dead: 9 }, 'the classes must add to 50 seeds, got 49');
    refused({ dead: 11 }, 'the classes must add to 50 seeds, got 51');
  });

  test('no replicate, and no level', () => {
    expect(() => summariseTest({ replicates: [] })).toThrow(RangeError);
    expect(() => summariseTest({ replicates: okra, level: 95 })).toThrow(RangeError);
  });
});
