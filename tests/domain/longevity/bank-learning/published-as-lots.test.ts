import { describe, expect, it } from 'vitest';
import {
  meanAndSpreadTogether,
  publishedAsLots,
} from '../../../../lib/domain/longevity/bank-learning/published-as-lots';

const published = { mean: 1.75, sd: 0.75 };

describe('publishedAsLots', () => {
  it('adds nothing at the published figures and takes away on every side', () => {
    const at = publishedAsLots({ mean: 1.75, logSd: Math.log(0.75) }, published, 5);
    expect(at.height).toBeCloseTo(0, 12);
    expect(at.byMean).toBeCloseTo(0, 12);
    expect(at.byLogSd).toBeCloseTo(0, 12);
    for (const [mean, sd] of [
      [1.5, 0.75],
      [2, 0.75],
      [1.75, 0.5],
      [1.75, 1],
    ] as const) {
      expect(publishedAsLots({ mean, logSd: Math.log(sd) }, published, 5).height).toBeLessThan(-0.01);
    }
  });

  it('has the slopes of its height', () => {
    const at = (mean: number, logSd: number) => publishedAsLots({ mean, logSd }, published, 3);
    const { byMean, byLogSd } = at(1.2, -0.6);
    expect((at(1.2001, -0.6).height - at(1.1999, -0.6).height) / 2e-4).toBeCloseTo(byMean, 5);
    expect((at(1.2, -0.5999).height - at(1.2, -0.6001).height) / 2e-4).toBeCloseTo(byLogSd, 5);
  });
});

describe('meanAndSpreadTogether', () => {
  it('is the plain mean and spread of all lots when those of the bank are known exactly', () => {
    // Five published lots of mean 1.75 and variance 0.5625, and own lots at 1 and 2.
    const here = { mean: 1.4, logSd: Math.log(0.5) };
    const own = [1, 2];
    const z = own.reduce((sum, value) => sum + (value - 1.4) / 0.5, 0);
    const square = own.reduce((sum, value) => sum + ((value - 1.4) / 0.5) ** 2, 0);
    const { mean, logSd } = meanAndSpreadTogether(here, published, 5, { lots: 2, z, square });
    const expected = (5 * 1.75 + 3) / 7;
    expect(mean).toBeCloseTo(expected, 12);
    const squares = 5 * (0.5625 + (1.75 - expected) ** 2) + (1 - expected) ** 2 + (2 - expected) ** 2;
    expect(Math.exp(2 * logSd)).toBeCloseTo(squares / 7, 12);
  });

  it('stays at the published figures without lots', () => {
    const { mean, logSd } = meanAndSpreadTogether({ mean: 0, logSd: 0 }, published, 5, { lots: 0, z: 0, square: 0 });
    expect(mean).toBeCloseTo(1.75, 12);
    expect(Math.exp(logSd)).toBeCloseTo(0.75, 12);
  });
});
