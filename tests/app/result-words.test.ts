import { describe, expect, test } from 'vitest';
import {
  comparedInWords,
  heterogeneityInWords,
  inHundred,
  resultInWords,
  unevenInWords,
} from '@/app/(bank)/germination/_parts/result-words';
import { summariseTest } from '@/lib/domain/germination/result';
import { compareTwoResults } from '@/lib/domain/germination/two-results';

const dish = (normal: number, { seeds = 50, hard = 0, fresh = 0 } = {}) => ({
  ...{ seeds, normal, abnormal: 0, hard, fresh },
  dead: seeds - normal - hard - fresh,
});
const summary = (dishes: ReturnType<typeof dish>[]) => summariseTest({ replicates: dishes });

describe('the sentence of a test', () => {
  // Wilson bounds of 162 in 200, from R prop.test(162, 200, correct = FALSE): 0.74999, 0.85834; rounded outwards
  test('says the share and the limits of the truth', () => {
    expect(resultInWords(summary([dish(41), dish(40), dish(41), dish(40)]))).toBe(
      '**81 in 100 seeds germinated**; 19 times in 20 the truth lies between 74 and 86.',
    );
  });

  test('adds the alive when there is hard or fresh seed', () => {
    const words = resultInWords(summary([dish(40, { hard: 5 }), dish(40, { fresh: 2 })]));
    expect(words).toMatch(/With hard and fresh seed \*\*87 in 100 are alive\*\*/);
    expect(resultInWords(summary([dish(40, { fresh: 2 }), dish(40)]))).toMatch(/With fresh seed/);
  });

  test('never rounds to all or none what is not', () => {
    expect(inHundred(399, 400)).toBe('over 99 in 100');
    expect(inHundred(400, 400)).toBe('100 in 100');
    expect(inHundred(1, 400)).toBe('under 1 in 100');
    expect(inHundred(0, 400)).toBe('0 in 100');
  });
});

test('replicates that differ by chance are not remarked on, others are', () => {
  expect(heterogeneityInWords(summary([dish(41), dish(40), dish(41), dish(40)]))).toBeNull();
  expect(heterogeneityInWords(summary([dish(41)]))).toBeNull();
  expect(heterogeneityInWords(summary([dish(41), dish(40), dish(14), dish(40)]))).toMatch(/less than once in 1000/);
});

test('uneven dishes widen the limits, and few of them tell little of it', () => {
  const interval = { ok: true, lower: 0.589, upper: 0.9001, level: 0.95, mean: 0.8, correlation: 0.1 } as const;
  expect(unevenInWords(interval, 4)).toBe(
    'Allowing for dishes as uneven as these, the truth lies between 58 and 91 in 100.',
  );
  expect(unevenInWords(interval, 2)).toMatch(/Two dishes tell little of it\.$/);
  expect(unevenInWords(null, 4)).toBeNull();
  expect(unevenInWords({ ok: false, reason: 'one-replicate' }, 1)).toBeNull();
});

describe('beside the test before', () => {
  const compare = (now: number, before: number, seeds: number, trusted = true) =>
    comparedInWords(
      { number: 'T-0001', finishedOn: '2024-03-02', seeds, normal: before },
      { seeds, normal: now },
      compareTwoResults({ germinated: now, seeds }, { germinated: before, seeds }),
      trusted,
    );

  test('two that agree say what is usual', () => {
    // 7 CFR 201.63: 7 points at a mean of 80-89 % for 400 seeds
    expect(compare(324, 340, 400)).toBe(
      'T-0001 of 2 Mar 2024 gave 85 %: 4 points apart, and 7 is usual between two tests. The two agree.',
    );
    expect(compare(43, 41, 50)).toMatch(/4 points apart, no more than chance explains/);
  });

  test('a fall is believed only from a test whose replicates agree, a rise never', () => {
    expect(compare(280, 360, 400)).toMatch(/20 points apart, and only 7 is usual. Seed ages/);
    expect(compare(280, 360, 400, false)).toMatch(/Do not believe the loss/);
    expect(compare(360, 280, 400)).toMatch(/only as dormancy wears off/);
  });
});
