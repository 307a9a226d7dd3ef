import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lotEvidence } from '../../../../lib/domain/longevity/bank-learning/lot-evidence';
import { populationFit } from '../../../../lib/domain/longevity/bank-learning/population-likelihood';
import type { LotTest } from '../../../../lib/domain/longevity/lot-model';
import { goldenRows } from '../../../support/golden-table';
import { goldenCrop } from './golden-crops';

interface MarginalRow {
  crop: string;
  initialMean: number;
  initialSd: number;
  rateMean: number;
  rateSd: number;
  logLikelihood: number;
}

const belief = (row: MarginalRow) => ({
  initial: { mean: row.initialMean, sd: row.initialSd },
  logRate: { mean: row.rateMean, sd: row.rateSd },
});

describe('the marginal likelihood of a crop', () => {
  it('agrees with a dense grid in R to 0.001 in the logarithm at four beliefs for each of five crops, one of them far off', () => {
    for (const row of goldenRows<MarginalRow>('bank-learning', 'marginals')) {
      const evidence = goldenCrop(row.crop).lots.map(lotEvidence);
      const { logLikelihood } = populationFit(evidence, belief(row));
      if (row.rateSd > 0.4) expect(Math.abs(logLikelihood - row.logLikelihood), JSON.stringify(row)).toBeLessThan(1e-6);
      expect(Math.abs(logLikelihood - row.logLikelihood), JSON.stringify(row)).toBeLessThan(1e-3);
    }
  });

  it('has the slopes that its expected z and z^2 say', () => {
    const evidence = goldenCrop('corners').lots.map(lotEvidence);
    const at = (initialMean: number, rateLogSd: number) =>
      populationFit(evidence, {
        initial: { mean: initialMean, sd: 0.6 },
        logRate: { mean: 0.2, sd: Math.exp(rateLogSd) },
      });
    const here = at(1.5, -0.4);
    const byMean = (at(1.501, -0.4).logLikelihood - at(1.499, -0.4).logLikelihood) / 0.002;
    const bySpread = (at(1.5, -0.399).logLikelihood - at(1.5, -0.401).logLikelihood) / 0.002;
    expect(here.initialZ / 0.6).toBeCloseTo(byMean, 4);
    expect(here.rateSquare - evidence.length).toBeCloseTo(bySpread, 4);
  });

  const test = fc
    .record({
      probitsLost: fc.double({ min: 0, max: 3, noNaN: true }),
      sown: fc.integer({ min: 1, max: 400 }),
      share: fc.double({ min: 0, max: 1, noNaN: true }),
    })
    .map(({ probitsLost, sown, share }): LotTest => ({ probitsLost, sown, germinated: Math.round(share * sown) }));

  it('does not change when a test is split into its dishes, without correlation', () => {
    fc.assert(
      fc.property(fc.array(test, { minLength: 1, maxLength: 3 }), fc.integer({ min: 2, max: 4 }), (tests, dishes) => {
        const split = tests.flatMap(({ probitsLost, germinated, sown }) =>
          Array.from({ length: dishes }, (_, dish) => {
            const part = (whole: number) =>
              Math.floor(((dish + 1) * whole) / dishes) - Math.floor((dish * whole) / dishes);
            // Shared out so that no dish has more alive than seeds: all the alive first.
            const seeds = part(sown);
            const before = Array.from(
              { length: dish },
              (_, k) => Math.floor(((k + 1) * sown) / dishes) - Math.floor((k * sown) / dishes),
            ).reduce((sum, value) => sum + value, 0);
            return { probitsLost, germinated: Math.max(0, Math.min(seeds, germinated - before)), sown: seeds };
          }).filter((one) => one.sown > 0),
        );
        const at = { initial: { mean: 1.2, sd: 0.5 }, logRate: { mean: 0.3, sd: 0.4 } };
        const whole = populationFit([lotEvidence({ tests })], at).logLikelihood;
        const parts = populationFit([lotEvidence({ tests: split })], at).logLikelihood;
        expect(Math.abs(whole - parts)).toBeLessThan(1e-9 * Math.abs(whole) + 1e-9);
      }),
      { seed: 20260901, numRuns: 60 },
    );
  });

  it('leaves the rate as it was believed when a lot was tested only when fresh', () => {
    const fresh = [lotEvidence({ tests: [{ probitsLost: 0, germinated: 90, sown: 100 }] })];
    const fit = populationFit(fresh, { initial: { mean: 1.75, sd: 0.75 }, logRate: { mean: 0.3, sd: 0.9 } });
    expect([fit.rateZ, fit.rateSquare]).toEqual([0, 1]);
  });

  it('says minus infinity, not NaN, for a belief out of all reach of the tests', () => {
    const dead = [lotEvidence({ tests: [{ probitsLost: 0, germinated: 200, sown: 400 }] })];
    const { logLikelihood } = populationFit(dead, { initial: { mean: 11, sd: 0.15 }, logRate: { mean: 0, sd: 0.5 } });
    expect(logLikelihood).toBe(Number.NEGATIVE_INFINITY);
  });
});

describe('lotEvidence', () => {
  it('refuses a lot without a test and figures that cannot be', () => {
    const one = { probitsLost: 0, germinated: 5, sown: 10 };
    expect(() => lotEvidence({ tests: [] })).toThrow(RangeError);
    expect(() => lotEvidence({ tests: [{ ...one, germinated: 11 }] })).toThrow(/germinated/);
    expect(() => lotEvidence({ tests: [{ ...one, sown: 0 }] })).toThrow(/sown/);
    expect(() => lotEvidence({ tests: [{ ...one, probitsLost: -1 }] })).toThrow(/probitsLost/);
    expect(() => lotEvidence({ tests: [one], intraReplicateCorrelation: 1 })).toThrow(/intraReplicateCorrelation/);
  });
});
