import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fastLogCdf } from '../../../lib/domain/longevity/fast-log-cdf';
import {
  fitLot,
  type LotTest,
  medianViability,
  probabilityBelow,
  viabilityAt,
} from '../../../lib/domain/longevity/lot-model';
import { normalCdf, normalQuantile } from '../../../lib/domain/statistics/normal-distribution';
import { fitProbit } from '../../../lib/domain/statistics/probit-regression';
import golden from '../../golden/lot-model.json';
import { denseGridLotModel } from '../../support/dense-grid-lot-model';

const own = { initial: { mean: 1.75, sd: 0.75 }, logRate: { mean: 0, sd: 0.5 } };
const doubtful = { initial: { mean: 1.75, sd: 0.75 }, logRate: { mean: 0.3, sd: 0.9 } };
const wide = { initial: { mean: 0, sd: 5 }, logRate: { mean: 0, sd: 5 } };
const t = (probitsLost: number, germinated: number, sown: number): LotTest => ({ probitsLost, germinated, sown });
const PROMISED = 0.003;

const aTest = fc
  .record({
    probitsLost: fc.double({ min: 0, max: 3, noNaN: true }),
    sown: fc.integer({ min: 1, max: 400 }),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
  })
  .map(({ probitsLost, sown, share }) => t(probitsLost, Math.round(share * sown), sown));
const someTests = fc.array(aTest, { maxLength: 5 });
const aPrior = fc.constantFrom(own, doubtful, wide);
const aCorrelation = fc.constantFrom(0, 0, 0.02, 0.3);

describe('accuracy of the lot model', () => {
  it('agrees with adaptive quadrature in R within 0.001', () => {
    for (const row of golden.rows) {
      const posterior = fitLot({ tests: row.tests, prior: row.prior, intraReplicateCorrelation: row.rho });
      const found = probabilityBelow(posterior, row);
      const message = `${row.name}: P(below ${row.threshold} at ${row.probitsLost}) ${found}, R ${row.chance}`;
      expect(Math.abs(found - row.chance), message).toBeLessThan(0.001);
    }
  });

  // Each prior and set of tests is chosen for a way in which an integration can go wrong.
  it.each([
    ['no tests', [], own, 0],
    ['no tests under a wide prior', [], wide, 0],
    [
      'none of 200 under a wide prior',
      [t(1.29, 0, 200)],
      { initial: { mean: 1.75, sd: 5 }, logRate: { mean: 1.5, sd: 0.5 } },
      0,
    ],
    [
      'all of 400, with likeness, under a wide prior',
      [t(3.758, 400, 400), t(0, 400, 400)],
      { initial: { mean: 1.75, sd: 5 }, logRate: { mean: -1, sd: 0.9 } },
      0.4,
    ],
    ['contradictory tests', [t(1, 95, 100), t(1.05, 20, 100)], own, 0],
    ['contradictory large tests under a wide prior', [t(1, 380, 400), t(1.05, 80, 400)], wide, 0],
    [
      'rising results against a firm prior',
      [t(19, 31, 50), t(22, 45, 50), t(25.6, 46, 50)],
      { initial: { mean: 0, sd: 0.1 }, logRate: { mean: 0.3, sd: 0.5 } },
      0,
    ],
    [
      'five large tests',
      [t(0, 388, 400), t(0.5, 372, 400), t(1, 350, 400), t(1.5, 300, 400), t(2, 250, 400)],
      doubtful,
      0,
    ],
    ['half alive after far ageing', [t(50, 200, 400), t(0, 200, 400), t(1, 190, 400)], wide, 0],
    ['tests at the start only', [t(0, 93, 100), t(0, 90, 100)], doubtful, 0],
    ['one of ten', [t(0.3, 1, 10)], own, 0.1],
  ] as const)(
    'is within 0.003 of a dense grid: %s',
    (_name, tests, prior, rho) => {
      const posterior = fitLot({ tests, prior, intraReplicateCorrelation: rho });
      const dense = denseGridLotModel({ tests, prior, rho }, { rates: 700, perRate: 500, logCdf: fastLogCdf });
      for (const probitsLost of [0, 0.05, 0.5, 1, 2, 8, 50]) {
        for (const threshold of [0.01, 0.3, 0.85, 0.99]) {
          const found = probabilityBelow(posterior, { probitsLost, threshold });
          const expected = dense.chanceBelow(probitsLost, normalQuantile(threshold));
          expect(
            Math.abs(found - expected),
            `P(below ${threshold} at ${probitsLost}) ${found}, dense ${expected}`,
          ).toBeLessThan(PROMISED);
        }
        for (const level of [0.5, 0.9, 0.99]) {
          const band = viabilityAt(posterior, { probitsLost, level });
          for (const [value, chance] of [
            [band.lower, 0.5 - level / 2],
            [band.median, 0.5],
            [band.upper, 0.5 + level / 2],
          ] as const) {
            const expected = dense.viabilityQuantile(probitsLost, chance);
            expect(
              Math.abs(value - expected),
              `viability at ${probitsLost}, ${chance}: ${value}, dense ${expected}`,
            ).toBeLessThan(PROMISED);
          }
        }
      }
    },
    60_000,
  );
});

describe('the lot model beside probit regression', () => {
  it.each([
    [[t(0, 390, 400), t(1, 350, 400), t(2, 250, 400)]],
    [[t(0, 95, 100), t(1.5, 60, 100)]],
    [[t(0.2, 180, 200), t(0.6, 160, 200), t(1.4, 90, 200), t(2, 50, 200)]],
  ])('has under a wide prior its median within 0.01 of the fitted line at the tests: %j', (tests) => {
    const fit = fitProbit({
      x: tests.map((test) => test.probitsLost),
      successes: tests.map((test) => test.germinated),
      trials: tests.map((test) => test.sown),
    });
    if (!fit.ok) throw new Error(fit.reason);
    const posterior = fitLot({ tests, prior: wide });
    for (const { probitsLost } of tests) {
      const line = normalCdf(fit.intercept + fit.slope * probitsLost);
      expect(Math.abs(viabilityAt(posterior, { probitsLost }).median - line)).toBeLessThan(0.01);
    }
  });

  it('has under a wide prior a band as wide as the normal theory gives, within a tenth', () => {
    const tests = [t(0, 390, 400), t(1, 350, 400), t(2, 250, 400)];
    const fit = fitProbit({ x: [0, 1, 2], successes: [390, 350, 250], trials: [400, 400, 400] });
    if (!fit.ok) throw new Error(fit.reason);
    const [[a, b], [, d]] = fit.covariance as [[number, number], [number, number]];
    const band = viabilityAt(fitLot({ tests, prior: wide }), { probitsLost: 1, level: 0.9 });
    const widthInProbits = normalQuantile(band.upper) - normalQuantile(band.lower);
    const expected = 2 * normalQuantile(0.95) * Math.sqrt(a + 2 * b + d);
    expect(Math.abs(widthInProbits / expected - 1)).toBeLessThan(0.1);
  });
});

describe('laws of the lot model', () => {
  // Interpolation may ripple by a few parts in a hundred thousand; laws are held to that.
  const RIPPLE = 1e-4;

  it('gives proportions and chances, ordered and finite, whatever the tests', () => {
    fc.assert(
      fc.property(
        someTests,
        aPrior,
        aCorrelation,
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        (tests, prior, rho, probitsLost) => {
          const posterior = fitLot({ tests, prior, intraReplicateCorrelation: rho });
          const { median, lower, upper } = viabilityAt(posterior, { probitsLost });
          const below = probabilityBelow(posterior, { probitsLost, threshold: 0.85 });
          expect(0 <= lower && lower <= median && median <= upper && upper <= 1 && below >= 0 && below <= 1).toBe(true);
        },
      ),
      { seed: 5, numRuns: 150 },
    );
  });

  it('loses viability with ageing: the median falls and the chance of being below rises', () => {
    fc.assert(
      fc.property(
        someTests,
        aPrior,
        aCorrelation,
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (tests, prior, rho, probitsLost, more) => {
          const posterior = fitLot({ tests, prior, intraReplicateCorrelation: rho });
          const now = probabilityBelow(posterior, { probitsLost, threshold: 0.85 });
          const later = probabilityBelow(posterior, { probitsLost: probitsLost + more, threshold: 0.85 });
          expect(later).toBeGreaterThanOrEqual(now - RIPPLE);
          const nowMedian = viabilityAt(posterior, { probitsLost }).median;
          expect(viabilityAt(posterior, { probitsLost: probitsLost + more }).median).toBeLessThanOrEqual(
            nowMedian + RIPPLE,
          );
        },
      ),
      { seed: 6, numRuns: 150 },
    );
  });

  it('makes a higher threshold likelier to be missed', () => {
    fc.assert(
      fc.property(
        someTests,
        aPrior,
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0.01, max: 0.98, noNaN: true }),
        (tests, prior, probitsLost, threshold) => {
          const posterior = fitLot({ tests, prior });
          const low = probabilityBelow(posterior, { probitsLost, threshold });
          expect(probabilityBelow(posterior, { probitsLost, threshold: threshold + 0.01 })).toBeGreaterThanOrEqual(
            low - RIPPLE,
          );
        },
      ),
      { seed: 7, numRuns: 150 },
    );
  });

  it('nests its bands: a higher level holds the lower one', () => {
    fc.assert(
      fc.property(someTests, aPrior, fc.double({ min: 0, max: 20, noNaN: true }), (tests, prior, probitsLost) => {
        const posterior = fitLot({ tests, prior });
        const narrow = viabilityAt(posterior, { probitsLost, level: 0.5 });
        const broad = viabilityAt(posterior, { probitsLost, level: 0.95 });
        expect(broad.lower).toBeLessThanOrEqual(narrow.lower + RIPPLE);
        expect(broad.upper).toBeGreaterThanOrEqual(narrow.upper - RIPPLE);
      }),
      { seed: 8, numRuns: 150 },
    );
  });

  it('agrees with itself: the chance of being below the band is what the level says', () => {
    fc.assert(
      fc.property(someTests, fc.double({ min: 0, max: 2, noNaN: true }), (tests, probitsLost) => {
        const posterior = fitLot({ tests, prior: own });
        const { lower, upper } = viabilityAt(posterior, { probitsLost, level: 0.8 });
        // A band of less than a millionth from 0 or 1 has no room left to tell.
        if (!(lower > 1e-6 && upper < 1 - 1e-6)) return;
        expect(Math.abs(probabilityBelow(posterior, { probitsLost, threshold: lower }) - 0.1)).toBeLessThan(RIPPLE);
        expect(Math.abs(probabilityBelow(posterior, { probitsLost, threshold: upper }) - 0.9)).toBeLessThan(RIPPLE);
      }),
      { seed: 9, numRuns: 100 },
    );
  });

  it('without tests is the prior', () => {
    const posterior = fitLot({ tests: [], prior: own });
    const { median, lower, upper } = viabilityAt(posterior, { probitsLost: 0, level: 0.9 });
    expect(Math.abs(median - normalCdf(1.75))).toBeLessThan(RIPPLE);
    expect(Math.abs(lower - normalCdf(1.75 + 0.75 * normalQuantile(0.05)))).toBeLessThan(RIPPLE);
    expect(Math.abs(upper - normalCdf(1.75 + 0.75 * normalQuantile(0.95)))).toBeLessThan(RIPPLE);
  });

  it('takes one test of 400 and its four replicates of 100 alike, without likeness between seeds', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 4, maxLength: 4 }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        (counts, probitsLost) => {
          const whole = fitLot({
            tests: [
              t(
                probitsLost,
                counts.reduce((a, b) => a + b),
                400,
              ),
            ],
            prior: own,
          });
          const parts = fitLot({ tests: counts.map((germinated) => t(probitsLost, germinated, 100)), prior: own });
          expect(viabilityAt(parts, { probitsLost: 1 })).toEqual(viabilityAt(whole, { probitsLost: 1 }));
        },
      ),
      { seed: 10, numRuns: 50 },
    );
  });

  it('is less sure of a test whose seeds resemble each other', () => {
    const tests = [t(0.5, 170, 200)];
    const width = (rho: number) => {
      const band = viabilityAt(fitLot({ tests, prior: own, intraReplicateCorrelation: rho }), { probitsLost: 0.5 });
      return band.upper - band.lower;
    };
    expect(width(0.02)).toBeGreaterThan(1.2 * width(0));
    expect(width(0.1)).toBeGreaterThan(width(0.02));
    expect(Math.abs(width(1e-7) - width(0))).toBeLessThan(1e-4);
  });

  it('is not led by the lot that was fitted before it', () => {
    const tests = [t(0, 96, 100), t(0.9, 82, 100)];
    const first = viabilityAt(fitLot({ tests, prior: own }), { probitsLost: 1 });
    const posterior = fitLot({ tests, prior: own });
    fitLot({ tests: [t(3, 0, 400), t(9, 12, 20)], prior: wide });
    expect(viabilityAt(posterior, { probitsLost: 1 })).toEqual(first);
  });
});

describe('the median alone', () => {
  it('is the one that comes with the band', () => {
    fc.assert(
      fc.property(someTests, aPrior, fc.double({ min: 0, max: 20, noNaN: true }), (tests, prior, probitsLost) => {
        const posterior = fitLot({ tests, prior });
        expect(medianViability(posterior, { probitsLost })).toBe(viabilityAt(posterior, { probitsLost }).median);
      }),
      { seed: 17, numRuns: 60 },
    );
  });

  it.each([-1, Number.NaN])('refuses %s probits lost', (probitsLost) => {
    expect(() => medianViability(fitLot({ tests: [], prior: own }), { probitsLost })).toThrow(RangeError);
  });
});

describe('what the lot model refuses', () => {
  it.each([
    ['more germinated than sown', [t(0, 101, 100)]],
    ['no seeds sown', [t(0, 0, 0)]],
    ['part of a seed', [t(0, 4.5, 10)]],
    ['ageing below zero', [t(-0.1, 4, 10)]],
    ['ageing that is not a number', [t(Number.NaN, 4, 10)]],
  ])('refuses %s', (_what, tests) => {
    expect(() => fitLot({ tests, prior: own })).toThrow(RangeError);
  });

  it.each([-0.01, 1, Number.NaN])('refuses a correlation of %s', (intraReplicateCorrelation) => {
    expect(() => fitLot({ tests: [], prior: own, intraReplicateCorrelation })).toThrow(RangeError);
  });

  it.each([0, -1, 11, Number.NaN])('refuses a prior sd of %s', (sd) => {
    expect(() => fitLot({ tests: [], prior: { ...own, logRate: { mean: 0, sd } } })).toThrow(/logRate.sd/);
  });

  it('refuses thresholds and levels outside 0 to 1, and ageing below zero', () => {
    const posterior = fitLot({ tests: [], prior: own });
    for (const threshold of [0, 1, 85])
      expect(() => probabilityBelow(posterior, { probitsLost: 1, threshold })).toThrow(RangeError);
    for (const level of [0, 1, 90]) expect(() => viabilityAt(posterior, { probitsLost: 1, level })).toThrow(RangeError);
    expect(() => viabilityAt(posterior, { probitsLost: -1 })).toThrow(RangeError);
  });
});
