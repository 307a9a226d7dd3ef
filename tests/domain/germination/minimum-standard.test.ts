import { describe, expect, test } from 'vitest';
import { intervalIfUneven } from '../../../lib/domain/germination/interval-if-uneven';
import { compareWithStandard } from '../../../lib/domain/germination/minimum-standard';
import { summariseTest } from '../../../lib/domain/germination/result';
import { binomialInterval } from '../../../lib/domain/statistics/binomial-interval';
import { dish, dishes } from './classed-replicate';

const test400 = (normal: number, hard = 0) =>
  summariseTest({ replicates: [0, 1, 2, 3].map(() => dish(100, { normal, hard })) });

describe('the verdict rests on the whole interval', () => {
  // 340 of 400: 95 % Wilson interval 81.17-88.17 % (R prop.test).
  const summary = test400(85);
  test.each([
    [80, 'meets'],
    [81, 'meets'],
    [82, 'too-uncertain'],
    [85, 'too-uncertain'],
    [88, 'too-uncertain'],
    [89, 'below'],
    [95, 'below'],
  ] as const)('a minimum of %i %%: %s', (minimumPercent, verdict) => {
    expect(compareWithStandard({ summary, minimumPercent }).verdict).toBe(verdict);
  });

  test('it uses the level of the summary', () => {
    const loose = summariseTest({ replicates: dishes(100, [85, 85, 85, 85]), level: 0.5 });
    expect(compareWithStandard({ summary: loose, minimumPercent: 83 }).verdict).toBe('meets');
    expect(compareWithStandard({ summary, minimumPercent: 83 }).verdict).toBe('too-uncertain');
  });

  test('a few seeds are never enough to be sure', () => {
    const few = summariseTest({ replicates: dishes(10, [10]) });
    expect(compareWithStandard({ summary: few, minimumPercent: 80 }).verdict).toBe('too-uncertain');
  });
});

test('hard seed counts by default and can be left out', () => {
  const summary = test400(60, 20);
  const counted = compareWithStandard({ summary, minimumPercent: 70 });
  expect(counted).toMatchObject({ verdict: 'meets', proportion: 0.8 });
  const { lower, upper, level } = binomialInterval({ successes: 320, trials: 400 });
  expect(counted.interval).toEqual({ lower, upper, level });
  const bare = compareWithStandard({ summary, minimumPercent: 70, countsHardSeed: false });
  expect(bare).toMatchObject({ verdict: 'below', proportion: 0.6 });
});

describe('the sentence', () => {
  const sentence = (normal: number, minimumPercent: number, hard = 0) =>
    compareWithStandard({ summary: test400(normal, hard), minimumPercent }).sentence;

  test('gives the figure, the likely range rounded outwards, and the verdict', () => {
    expect(sentence(85, 80)).toBe(
      '85 % germinated; the lot is likely between 81 and 89 %. It meets the minimum of 80 %.',
    );
    expect(sentence(85, 95)).toBe(
      '85 % germinated; the lot is likely between 81 and 89 %. It is below the minimum of 95 %.',
    );
    expect(sentence(85, 85)).toBe(
      '85 % germinated; the lot is likely between 81 and 89 %. The minimum of 85 % lies within that: too uncertain to say, test more seed to decide.',
    );
  });

  test('says when hard seed is in the figure', () => {
    expect(sentence(60, 70, 20)).toMatch(/^80 % germinated, hard seed included; /);
  });

  test('never prints the minimum inside a range that the verdict says it is outside of', () => {
    // The bounds are 81.17 and 88.17: outward rounding alone would print 89 for a minimum of 89, 81 for one of 81.1.
    expect(sentence(85, 89)).toContain('between 81 and just under 89 %. It is below');
    expect(sentence(85, 81.1)).toContain('between 81.1 and 89 %. It meets');
  });
});

test('dishes that differ by more than chance are judged by the interval that allows for it', () => {
  const counts = [95, 70, 96, 79].map((normal) => ({ seeds: 100, normal }));
  const summary = summariseTest({ replicates: counts.map(({ normal }) => dish(100, { normal })) });
  const plain = compareWithStandard({ summary, minimumPercent: 81 });
  const allowing = compareWithStandard({ summary, minimumPercent: 81, uneven: intervalIfUneven(counts) });
  expect(plain.verdict).toBe('meets');
  expect(allowing.verdict).toBe('too-uncertain');
  expect(allowing.interval.lower).toBeLessThan(plain.interval.lower);
  expect(allowing.sentence).toMatch(/%, allowing for uneven dishes\. The minimum of 81 %/);
  expect(compareWithStandard({ summary, minimumPercent: 81, uneven: { ok: false, reason: 'one-replicate' } })).toEqual(
    plain,
  );
});

test('refuses a minimum that is no percentage', () => {
  for (const minimumPercent of [0, -1, 101, Number.NaN]) {
    expect(() => compareWithStandard({ summary: test400(85), minimumPercent })).toThrow(RangeError);
  }
});
