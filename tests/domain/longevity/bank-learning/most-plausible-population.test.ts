import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lotEvidence, type TestedLot } from '../../../../lib/domain/longevity/bank-learning/lot-evidence';
import {
  type MostPlausiblePopulation,
  mostPlausiblePopulation,
} from '../../../../lib/domain/longevity/bank-learning/most-plausible-population';
import { goldenRows } from '../../../support/golden-table';
import { goldenCrop } from './golden-crops';
import { simulatedLots } from './simulated-lots';

interface BestRow {
  crop: string;
  initialMean: number;
  initialSd: number;
  rateMean: number;
  rateSd: number;
  logPosterior: number;
  seInitialMean: number;
  seInitialLogSd: number;
  seRateMean: number;
  seRateLogSd: number;
  correlationOfMeans: number;
  initialMeanAlone: number;
  initialSdAlone: number;
}

const published = { initial: { mean: 1.75, sd: 0.75 }, logRate: { mean: 0, sd: 0.5 } };

function reached(result: MostPlausiblePopulation) {
  if (!result.ok) throw new Error(result.reason);
  return result;
}
const errorOf = (covariance: number[][], index: number) => Math.sqrt((covariance[index] as number[])[index] as number);

describe('the most plausible belief', () => {
  it("agrees with R's optim: figures to 1e-6, their standard errors to 1e-5", () => {
    for (const row of goldenRows<BestRow>('bank-learning', 'best')) {
      const { lots, ...question } = goldenCrop(row.crop);
      const { population, covariance, logPosterior } = reached(
        mostPlausiblePopulation({ evidence: lots.map(lotEvidence), ...question }),
      );
      // The crop of absurd lots has a spread of rates of 2, which reaches past the ends of both grids.
      const slack = row.rateSd > 1.5 ? 2000 : 1;
      const near = (actual: number, expected: number, tolerance: number) =>
        expect(Math.abs(actual - expected), `${row.crop}: ${actual} for ${expected}`).toBeLessThan(tolerance * slack);
      near(population.initial.mean, row.initialMean, 1e-6);
      near(population.initial.sd, row.initialSd, 1e-6);
      near(population.logRate.mean, row.rateMean, 1e-6);
      near(population.logRate.sd, row.rateSd, 1e-6);
      near(logPosterior, row.logPosterior, 1e-6);
      [row.seInitialMean, row.seInitialLogSd, row.seRateMean, row.seRateLogSd].forEach((error, index) => {
        near(errorOf(covariance, index), error, 1e-5 * error);
      });
      const together = (covariance[0] as number[])[2] as number;
      near(together / (errorOf(covariance, 0) * errorOf(covariance, 2)), row.correlationOfMeans, 1e-4);
    }
  });

  it('holds the rate as published when only the initial viability is learnt', () => {
    for (const row of goldenRows<BestRow>('bank-learning', 'best')) {
      const { lots, ...question } = goldenCrop(row.crop);
      const evidence = lots.map(lotEvidence);
      const { population, covariance } = reached(mostPlausiblePopulation({ evidence, ...question, learnRate: false }));
      expect(Math.abs(population.logRate.mean - question.published.logRate.mean)).toBe(0);
      expect(population.logRate.sd).toBeCloseTo(question.published.logRate.sd, 12);
      expect(Math.abs(population.initial.mean - row.initialMeanAlone)).toBeLessThan(1e-4);
      expect(Math.abs(population.initial.sd - row.initialSdAlone)).toBeLessThan(1e-4);
      expect(covariance[2]).toEqual([0, 0, 0, 0]);
    }
  });

  it('is what was published when the bank has no lots', () => {
    const { population, logPosterior, covariance } = reached(mostPlausiblePopulation({ evidence: [], published }));
    expect(population.initial.mean).toBeCloseTo(1.75, 12);
    expect(population.initial.sd).toBeCloseTo(0.75, 12);
    expect(population.logRate.mean).toBeCloseTo(0, 12);
    expect(population.logRate.sd).toBeCloseTo(0.5, 12);
    expect(logPosterior).toBeCloseTo(0, 12);
    // The mean of three published lots: sd over the root of three.
    expect(errorOf(covariance, 0)).toBeCloseTo(0.75 / Math.sqrt(3), 6);
  });

  it('is the same in whatever order lots and their tests come', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 1, max: 8 }), (rngSeed, count) => {
        const lots = simulatedLots({ rngSeed, count, logRate: { mean: 0.4, sd: 0.4 } });
        const turned = lots.map(({ tests }) => ({ tests: [...tests].reverse() })).reverse();
        const [one, other] = [lots, turned].map((some) =>
          reached(mostPlausiblePopulation({ evidence: some.map(lotEvidence), published })),
        ) as [ReturnType<typeof reached>, ReturnType<typeof reached>];
        expect(one.population.logRate.mean).toBeCloseTo(other.population.logRate.mean, 6);
        expect(one.population.initial.sd).toBeCloseTo(other.population.initial.sd, 6);
      }),
      { seed: 20260902, numRuns: 15 },
    );
  });

  it('goes farther from what was published, and is surer, the more alike lots there are', () => {
    const fast: TestedLot = {
      tests: [
        { probitsLost: 0, germinated: 97, sown: 100 },
        { probitsLost: 0.6, germinated: 66, sown: 100 },
      ],
    };
    const steps = [0, 1, 3, 10, 30, 100].map((count) =>
      reached(mostPlausiblePopulation({ evidence: Array(count).fill(lotEvidence(fast)), published })),
    );
    steps.slice(1).forEach((step, index) => {
      const before = steps[index] as (typeof steps)[number];
      expect(step.population.logRate.mean).toBeGreaterThan(before.population.logRate.mean);
      // The first lot, far from the published rate, widens the spread; from then on lots only make surer.
      if (index > 0) expect(errorOf(step.covariance, 2)).toBeLessThan(errorOf(before.covariance, 2));
    });
    // A single lot moves the crop's rate by less than a quarter of the way to its own (log 2.6), a hundred nearly all the way.
    expect((steps[1] as (typeof steps)[number]).population.logRate.mean).toBeLessThan(0.24);
    expect((steps[5] as (typeof steps)[number]).population.logRate.mean).toBeGreaterThan(0.75);
  });

  it('moves less the more lots the published figures count as', () => {
    const evidence = simulatedLots({ rngSeed: 7, count: 12, logRate: { mean: Math.log(2), sd: 0.3 } }).map(lotEvidence);
    const means = [1, 5, 50].map(
      (publishedCountsAs) =>
        reached(mostPlausiblePopulation({ evidence, published, publishedCountsAs })).population.logRate.mean,
    ) as [number, number, number];
    expect(means[0]).toBeGreaterThan(means[1]);
    expect(means[1]).toBeGreaterThan(means[2]);
    expect(means[2]).toBeGreaterThan(0);
  });

  it('never takes lots for more alike than 0.15, however many agree', () => {
    const same = lotEvidence({ tests: [{ probitsLost: 0, germinated: 360, sown: 400 }] });
    const { population, covariance } = reached(
      mostPlausiblePopulation({ evidence: Array(1000).fill(same), published }),
    );
    expect(population.initial.sd).toBeCloseTo(0.15, 9);
    expect(errorOf(covariance, 1)).toBe(0);
  });

  it('ends without NaN in every corner', () => {
    const corner = fc.constantFrom<[number, number, number]>(
      [0, 0, 400],
      [0, 400, 400],
      [1, 400, 400],
      [1, 0, 400],
      [50, 200, 400],
      [0, 1, 1],
      [1e9, 10, 10],
      [0.4, 30, 100],
    );
    fc.assert(
      fc.property(
        fc.array(fc.array(corner, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 6 }),
        (lots) => {
          const evidence = lots.map((tests) =>
            lotEvidence({ tests: tests.map(([probitsLost, germinated, sown]) => ({ probitsLost, germinated, sown })) }),
          );
          const result = mostPlausiblePopulation({ evidence, published });
          if (!result.ok) return;
          const { initial, logRate } = result.population;
          for (const figure of [initial.mean, initial.sd, logRate.mean, logRate.sd, ...result.covariance.flat()]) {
            expect(figure).not.toBeNaN();
            expect(Number.isFinite(figure)).toBe(true);
          }
        },
      ),
      { seed: 20260903, numRuns: 40 },
    );
  });

  it('refuses published figures and weights that cannot be', () => {
    const wrong = { ...published, initial: { mean: 1.75, sd: 0.05 } };
    expect(() => mostPlausiblePopulation({ evidence: [], published: wrong })).toThrow(RangeError);
    expect(() => mostPlausiblePopulation({ evidence: [], published, publishedCountsAs: 0 })).toThrow(RangeError);
  });
});
