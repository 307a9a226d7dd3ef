import { expect, test } from 'vitest';
import { fitLot, probabilityBelow } from '../../../lib/domain/longevity/lot-model';
import { ageingUntilBelow } from '../../../lib/domain/regrow/ageing-until-below';

const prior = { initial: { mean: 1.75, sd: 0.75 }, logRate: { mean: 0, sd: 0.5 } };
const posterior = fitLot({ tests: [{ probitsLost: 0.1, germinated: 188, sown: 200 }], prior });

test.each([0.05, 0.1, 0.5, 0.9])('at the ageing found, the chance of being below is %d', (chance) => {
  const probitsLost = ageingUntilBelow({ posterior, threshold: 0.8, chance });
  expect(Math.abs(probabilityBelow(posterior, { probitsLost, threshold: 0.8 }) - chance)).toBeLessThan(0.0005);
});

test('a lot with a known start and rate reaches the threshold after the probits between them', () => {
  // Phi(1.5 - D) = 0.5 at D = 1.5
  const known = fitLot({ tests: [], prior: { initial: { mean: 1.5, sd: 0.001 }, logRate: { mean: 0, sd: 0.001 } } });
  expect(ageingUntilBelow({ posterior: known, threshold: 0.5, chance: 0.5 })).toBeCloseTo(1.5, 3);
});

test('a lot that was never as good takes no ageing', () => {
  const poor = fitLot({ tests: [{ probitsLost: 0, germinated: 100, sown: 400 }], prior });
  expect(ageingUntilBelow({ posterior: poor, threshold: 0.8, chance: 0.5 })).toBe(0);
});

test('refuses chances of 0 and 1', () => {
  expect(() => ageingUntilBelow({ posterior, threshold: 0.8, chance: 0 })).toThrow(/chance/);
  expect(() => ageingUntilBelow({ posterior, threshold: 0.8, chance: 1 })).toThrow(RangeError);
});
