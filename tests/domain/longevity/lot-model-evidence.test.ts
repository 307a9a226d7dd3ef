/**
 * More evidence never widens the band, on the average over what the evidence may turn out to be. One surprising test may
 * well widen it; the average over all outcomes, each with the chance that the model itself gives it, may not.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fitLot,
  type LotPrior,
  type LotTest,
  probabilityBelow,
  viabilityAt,
} from '../../../lib/domain/longevity/lot-model';
import { binomialLogPmf } from '../../../lib/domain/statistics/binomial';
import { normalCdf } from '../../../lib/domain/statistics/normal-distribution';

const FORECAST_AT = 1.5;
/** Probits from which the chance of each outcome is summed: finer than any test of 160 seeds can tell apart. */
const STEP = 0.02;

/** Chance of each count of living seeds in a further test, as the model holds now. */
function outcomes(tests: readonly LotTest[], prior: LotPrior, next: { probitsLost: number; sown: number }): number[] {
  const posterior = fitLot({ tests, prior });
  const chances = new Array<number>(next.sown + 1).fill(0);
  let before = 0;
  for (let probit = -8; probit <= 8; probit += STEP) {
    const below = probabilityBelow(posterior, {
      probitsLost: next.probitsLost,
      threshold: normalCdf(probit + STEP / 2),
    });
    const weight = below - before;
    before = below;
    if (weight <= 0) continue;
    const probability = normalCdf(probit);
    for (let alive = 0; alive <= next.sown; alive += 1) {
      (chances[alive] as number) +=
        weight * Math.exp(binomialLogPmf({ successes: alive, trials: next.sown, probability }));
    }
  }
  const sum = chances.reduce((total, chance) => total + chance, 0);
  return chances.map((chance) => chance / sum);
}

function bandWidth(tests: readonly LotTest[], prior: LotPrior, probitsLost = FORECAST_AT): number {
  const { lower, upper } = viabilityAt(fitLot({ tests, prior }), { probitsLost, level: 0.9 });
  return upper - lower;
}

function expectedWidth(
  tests: readonly LotTest[],
  prior: LotPrior,
  next: { probitsLost: number; sown: number },
): number {
  return outcomes(tests, prior, next).reduce((width, chance, germinated) => {
    if (chance < 1e-7) return width;
    return width + chance * bandWidth([...tests, { ...next, germinated }], prior);
  }, 0);
}

const cases = fc.record({
  initialMean: fc.double({ min: 1, max: 2.5, noNaN: true }),
  initialSd: fc.double({ min: 0.3, max: 1, noNaN: true }),
  logRateSd: fc.double({ min: 0.2, max: 0.9, noNaN: true }),
  firstAlive: fc.integer({ min: 20, max: 50 }),
  nextAt: fc.double({ min: 0, max: 1.5, noNaN: true }),
});

describe('more evidence never widens the expected band', () => {
  it('when a test is added, and when it has more seeds', () => {
    fc.assert(
      fc.property(cases, ({ initialMean, initialSd, logRateSd, firstAlive, nextAt }) => {
        const prior = { initial: { mean: initialMean, sd: initialSd }, logRate: { mean: 0, sd: logRateSd } };
        const tests = [{ probitsLost: 0, germinated: firstAlive, sown: 50 }];
        const widths = [
          bandWidth(tests, prior),
          ...[10, 40, 160].map((sown) => expectedWidth(tests, prior, { probitsLost: nextAt, sown })),
        ];
        widths.slice(1).forEach((width, index) => {
          expect(width, JSON.stringify(widths)).toBeLessThanOrEqual((widths[index] as number) + 0.002);
        });
      }),
      { seed: 318, numRuns: 12 },
    );
  });

  it('while one surprising test may: dead seed where much life was expected', () => {
    const prior = { initial: { mean: 1.75, sd: 0.75 }, logRate: { mean: 0, sd: 0.5 } };
    const tests = [{ probitsLost: 0, germinated: 50, sown: 50 }];
    const surprised = bandWidth([...tests, { probitsLost: 0.1, germinated: 6, sown: 10 }], prior, 0.1);
    expect(surprised).toBeGreaterThan(bandWidth(tests, prior, 0.1));
  });
});
