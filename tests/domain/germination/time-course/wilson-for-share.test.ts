import { expect, test } from 'vitest';
import { wilsonForShare } from '../../../../lib/domain/germination/time-course/wilson-for-share';
import { binomialInterval } from '../../../../lib/domain/statistics/binomial-interval';
import { expectClose } from '../../../support/golden-table';

test('with whole seeds it is the interval of every germination figure', () => {
  for (const trials of [1, 3, 25, 400, 100_000]) {
    for (const successes of new Set([0, 1, Math.floor(trials / 3), trials - 1, trials])) {
      for (const level of [0.5, 0.9, 0.95, 0.999]) {
        const expected = binomialInterval({ successes, trials, level });
        const found = wilsonForShare({ share: successes / trials, seeds: trials, level });
        expectClose(found.lower, expected.lower, 1e-12, { successes, trials, level });
        expectClose(found.upper, expected.upper, 1e-12, { successes, trials, level });
      }
    }
  }
});

test('refuses shares, seeds and levels outside their range', () => {
  expect(() => wilsonForShare({ share: 1.1, seeds: 5, level: 0.9 })).toThrow('share must be in [0, 1], got 1.1');
  expect(() => wilsonForShare({ share: 0.5, seeds: 0, level: 0.9 })).toThrow('seeds must be above 0, got 0');
  expect(() => wilsonForShare({ share: 0.5, seeds: 5, level: 1 })).toThrow('level must be in (0, 1), got 1');
});
