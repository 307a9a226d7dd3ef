import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { binomialUpperTail } from '../../../lib/domain/statistics/binomial';
import { binomialTailCurve } from '../../../lib/domain/statistics/binomial-tail-curve';

describe('the chance of at least so many, as a curve', () => {
  it('is the binomial upper tail at every chance, its far ends included', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 20_000 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (trials, share, probability) => {
          const successes = Math.max(1, Math.round(share * trials));
          const expected = binomialUpperTail({ successes, trials, probability });
          expect(Math.abs(binomialTailCurve(successes, trials)(probability) - expected)).toBeLessThan(1e-12);
        },
      ),
      { seed: 5, numRuns: 400 },
    );
  });

  it('is close to the tail where the bounds take over', () => {
    for (const probability of [0.05, 0.08, 0.1, 0.12, 0.2, 0.3]) {
      const expected = binomialUpperTail({ successes: 100, trials: 1000, probability });
      expect(Math.abs(binomialTailCurve(100, 1000)(probability) - expected)).toBeLessThan(1e-12);
    }
  });

  it('is nothing at chance 0 and all at chance 1', () => {
    expect(binomialTailCurve(1, 1)(0)).toBe(0);
    expect(binomialTailCurve(1, 1)(1)).toBe(1);
    expect(binomialTailCurve(1, 1)(0.3)).toBeCloseTo(0.3, 14);
  });
});
