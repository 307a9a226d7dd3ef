import { describe, expect, test } from 'vitest';
import {
  OWN_SEED_WEIGHT_ERROR,
  readabilityG,
  seedWeightPart,
  spreadOfAmount,
  USUAL_SEED_WEIGHT_ERROR,
  usualSeedWeightError,
  weighingVariance,
} from '../../../lib/domain/stock/spread-of-amount';

test('the last decimal of a weight tells the step of the balance', () => {
  const read: [number, number][] = [
    [12, 1],
    [250, 1],
    [12.5, 0.1],
    [-0.35, 0.01],
    [0.123456789, 0.00001],
    [0.1 + 0.2, 0.00001],
  ];
  for (const [grams, step] of read) expect(readabilityG(grams), String(grams)).toBeCloseTo(step, 12);
});

describe('spreadOfAmount', () => {
  test('seed counted one by one is not off at all', () => {
    expect(spreadOfAmount({ seeds: -200, weighedG: null })).toBe(0);
  });

  test('1000 seeds from 2.5 g: seed weight 3 %, single seeds 30 %, balance 0.1 g', () => {
    // by hand: 30^2 + 0.09 * 1000 + (0.1 / 0.0025)^2 / 12 = 900 + 90 + 133.3...
    expect(spreadOfAmount({ seeds: 1000, weighedG: 2.5 })).toBeCloseTo(Math.sqrt(990 + 1600 / 12), 10);
    expect(spreadOfAmount({ seeds: -1000, weighedG: -2.5 })).toBe(spreadOfAmount({ seeds: 1000, weighedG: 2.5 }));
  });

  test("the crop's usual seed makes it far wider", () => {
    const usual = spreadOfAmount({ seeds: 1000, weighedG: 2.5, seedWeightError: USUAL_SEED_WEIGHT_ERROR });
    expect(usual).toBeCloseTo(Math.sqrt(250 ** 2 + 90 + 1600 / 12), 10);
  });

  test('gives back the part of the seed weight', () => {
    const sd = spreadOfAmount({ seeds: -431, weighedG: -1.03, seedWeightError: 0.07 });
    expect(seedWeightPart(-431, -1.03, sd)).toBeCloseTo(0.07 * 431, 9);
    expect(seedWeightPart(431, 1.03, Math.sqrt(weighingVariance(431, 1.03)) / 2)).toBe(0);
  });

  test('refuses part seeds, weights the other way, and shares that are none', () => {
    expect(() => spreadOfAmount({ seeds: 1.5, weighedG: null })).toThrow(/1\.5/);
    expect(() => spreadOfAmount({ seeds: -5, weighedG: 1 })).toThrow(/weighedG/);
    expect(() => spreadOfAmount({ seeds: 5, weighedG: Number.NaN })).toThrow(/weighedG/);
    expect(() => spreadOfAmount({ seeds: 5, weighedG: 1, seedWeightError: 25 })).toThrow(/seedWeightError/);
  });
});

test('a wide range of sources makes the usual seed more uncertain, a narrow one never less than our own choice', () => {
  // ln(400 / 100) / (2 sqrt 3) = 1.38629 / 3.46410
  expect(usualSeedWeightError(100, 400)).toBeCloseTo(0.400189, 6);
  expect(usualSeedWeightError(380, 400)).toBe(USUAL_SEED_WEIGHT_ERROR);
  expect(usualSeedWeightError(null, null)).toBe(USUAL_SEED_WEIGHT_ERROR);
  expect(() => usualSeedWeightError(0, 10)).toThrow(/lower/);
  expect(OWN_SEED_WEIGHT_ERROR).toBeCloseTo(0.03, 12);
});
