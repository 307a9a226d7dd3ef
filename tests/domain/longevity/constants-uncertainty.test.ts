import { describe, expect, it } from 'vitest';
import { constantsUncertainty } from '../../../lib/domain/longevity/constants-uncertainty';
import golden from '../../golden/storage-life.json';

describe('constantsUncertainty', () => {
  it('agrees with R: gradient times covariance, at correlations 1 and 0', () => {
    for (const row of golden.delta) {
      const answer = constantsUncertainty({
        standardErrorKE: row.errorKE,
        standardErrorCW: row.errorCW,
        moisturePercent: row.moisture,
      });
      if (!answer) throw new Error('standard errors are known');
      // R's quadratic form takes a root of a difference, so its least error keeps about eight digits.
      expect(Math.abs(answer.leastStandardError - row.least), JSON.stringify(row)).toBeLessThan(1e-8);
      expect(Math.abs(answer.cautiousStandardError / row.cautious - 1), JSON.stringify(row)).toBeLessThan(1e-12);
      expect(Math.abs(answer.cautiousFactor / row.cautiousFactor - 1), JSON.stringify(row)).toBeLessThan(1e-11);
      expect(answer.leastFactor).toBeLessThanOrEqual(answer.cautiousFactor);
      expect(answer.leastFactor).toBeGreaterThanOrEqual(1);
    }
  });

  it('has no answer where a standard error was not published', () => {
    expect(constantsUncertainty({ standardErrorKE: null, standardErrorCW: 0.3, moisturePercent: 8 })).toBeNull();
    expect(constantsUncertainty({ standardErrorKE: 0.3, standardErrorCW: null, moisturePercent: 8 })).toBeNull();
  });

  it('leaves no room where both errors are none', () => {
    expect(constantsUncertainty({ standardErrorKE: 0, standardErrorCW: 0, moisturePercent: 8 })).toMatchObject({
      cautiousFactor: 1,
    });
  });

  it.each([
    { standardErrorKE: -1, standardErrorCW: 0.3, moisturePercent: 8 },
    { standardErrorKE: 0.3, standardErrorCW: Number.NaN, moisturePercent: 8 },
    { standardErrorKE: 0.3, standardErrorCW: 0.3, moisturePercent: 0.9 },
    { standardErrorKE: 0.3, standardErrorCW: 0.3, moisturePercent: 100 },
  ])('refuses %j', (question) => {
    expect(() => constantsUncertainty(question)).toThrow(RangeError);
  });
});
