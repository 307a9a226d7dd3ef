import { describe, expect, it } from 'vitest';
import { fitLot, probabilityBelow, viabilityAt } from '../../../lib/domain/longevity/lot-model';
import { sampleQuadrature } from '../../../lib/domain/longevity/sample-quadrature';
import { normalCdf } from '../../../lib/domain/statistics/normal-distribution';

const prior = { initial: { mean: 1.75, sd: 0.75 }, logRate: { mean: 0.3, sd: 0.9 } };
const cases = [
  { tests: [] },
  { tests: [{ probitsLost: 0.5, germinated: 50, sown: 50 }] },
  {
    tests: [
      { probitsLost: 0, germinated: 96, sown: 100 },
      { probitsLost: 0.8, germinated: 70, sown: 100 },
    ],
  },
];

describe('sampleQuadrature', () => {
  it.each(cases)('has positive weights that add to 1, and some hundreds of nodes: %j', ({ tests }) => {
    const nodes = sampleQuadrature(fitLot({ tests, prior }));
    expect(Math.abs(nodes.reduce((sum, node) => sum + node.weight, 0) - 1)).toBeLessThan(1e-12);
    expect(nodes.every((node) => node.weight > 0)).toBe(true);
    expect(nodes.length).toBeGreaterThan(100);
    expect(nodes.length).toBeLessThan(1500);
  });

  it.each(cases)('gives the mean viability that the chances of being below add up to: %j', ({ tests }) => {
    const posterior = fitLot({ tests, prior });
    for (const probitsLost of [0, 0.5, 2]) {
      const mean = sampleQuadrature(posterior).reduce(
        (sum, { initial, rate, weight }) => sum + weight * normalCdf(initial - rate * probitsLost),
        0,
      );
      // The mean of a proportion is the area above its distribution function.
      let area = 0;
      for (let i = 0; i < 1000; i += 1) {
        area += (1 - probabilityBelow(posterior, { probitsLost, threshold: (i + 0.5) / 1000 })) / 1000;
      }
      expect(Math.abs(mean - area)).toBeLessThan(0.002);
    }
  });

  it('has half its weight below the median', () => {
    const posterior = fitLot({ tests: [{ probitsLost: 0.5, germinated: 45, sown: 50 }], prior });
    const { median } = viabilityAt(posterior, { probitsLost: 1 });
    const below = sampleQuadrature(posterior).reduce(
      (sum, { initial, rate, weight }) => sum + (normalCdf(initial - rate) < median ? weight : 0),
      0,
    );
    expect(Math.abs(below - 0.5)).toBeLessThan(0.03);
  });
});
