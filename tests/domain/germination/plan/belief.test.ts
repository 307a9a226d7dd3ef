import { expect, test } from 'vitest';
import { BELIEF_STEPS, beliefInViability } from '@/lib/domain/germination/plan/belief';
import { fitLot, probabilityBelow, viabilityAt } from '@/lib/domain/longevity/lot-model';

const prior = { initial: { mean: 1.75, sd: 0.75 }, logRate: { mean: 0.3, sd: 0.9 } };
const LOTS = [
  fitLot({ tests: [], prior }),
  fitLot({ tests: [{ probitsLost: 0.4, germinated: 171, sown: 200 }], prior }),
  fitLot({ tests: [{ probitsLost: 0.1, germinated: 50, sown: 50 }], prior }),
  fitLot({ tests: [{ probitsLost: 0.5, germinated: 0, sown: 50 }], prior }),
];

test('the belief adds to 1, and below any whole percent it holds the chance that the lot model gives', () => {
  for (const posterior of LOTS) {
    for (const probitsLost of [0, 0.6, 2]) {
      const belief = beliefInViability(posterior, probitsLost);
      expect(belief).toHaveLength(BELIEF_STEPS);
      expect(belief.every((chance) => chance >= 0)).toBe(true);
      expect(belief.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 12);
      for (const percent of [20, 60, 85, 97]) {
        const below = belief.slice(0, percent).reduce((sum, chance) => sum + chance, 0);
        expect(below).toBeCloseTo(probabilityBelow(posterior, { probitsLost, threshold: percent / 100 }), 6);
      }
    }
  }
});

test('half of it lies on either side of the median', () => {
  const [, posterior] = LOTS;
  if (!posterior) throw new Error('no lot');
  const { median } = viabilityAt(posterior, { probitsLost: 0.6 });
  const belief = beliefInViability(posterior, 0.6);
  const below = belief.slice(0, Math.floor(median * 100)).reduce((sum, chance) => sum + chance, 0);
  expect(below).toBeLessThanOrEqual(0.5);
  expect(below + (belief[Math.floor(median * 100)] ?? 0)).toBeGreaterThanOrEqual(0.5);
});
