import { describe, expect, it } from 'vitest';
import { fitLot, viabilityAt } from '../../../lib/domain/longevity/lot-model';
import { initialViability, posteriorSummary } from '../../../lib/domain/longevity/posterior-summary';
import { normalQuantile } from '../../../lib/domain/statistics/normal-distribution';
import { denseGridLotModel } from '../../support/dense-grid-lot-model';

const prior = { initial: { mean: 1.75, sd: 0.75 }, logRate: { mean: 0.3, sd: 0.9 } };

describe('posteriorSummary', () => {
  it("gives the prior's own quantiles of the rate when nothing was tested", () => {
    const { relativeRate } = posteriorSummary(fitLot({ tests: [], prior }), { level: 0.9 });
    expect(relativeRate.median).toBeCloseTo(Math.exp(0.3), 3);
    expect(Math.abs(relativeRate.lower / Math.exp(0.3 + 0.9 * normalQuantile(0.05)) - 1)).toBeLessThan(0.005);
    expect(Math.abs(relativeRate.upper / Math.exp(0.3 + 0.9 * normalQuantile(0.95)) - 1)).toBeLessThan(0.005);
  });

  it('gives the median rate of the dense grid', () => {
    const tests = [
      { probitsLost: 0, germinated: 96, sown: 100 },
      { probitsLost: 0.8, germinated: 70, sown: 100 },
    ];
    const dense = denseGridLotModel({ tests, prior }, { rates: 1000, perRate: 200 });
    expect(
      Math.abs(posteriorSummary(fitLot({ tests, prior })).relativeRate.median / dense.medianRate - 1),
    ).toBeLessThan(0.01);
  });

  it('calls the viability at no ageing the initial viability', () => {
    const posterior = fitLot({ tests: [{ probitsLost: 1, germinated: 80, sown: 100 }], prior });
    expect(initialViability(posterior)).toEqual(viabilityAt(posterior, { probitsLost: 0 }));
    expect(posteriorSummary(posterior).initialViability).toEqual(initialViability(posterior));
  });
});
