import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  duplicatesUncertainty,
  ovenUncertainty,
  twoStageUncertainty,
} from '../../../lib/domain/moisture/oven-uncertainty';
import golden from '../../golden/oven-uncertainty.json';

describe('ovenUncertainty', () => {
  test('agrees with R: the symbolic slopes to 1e-10, a million simulated weighings to 0.5 %', () => {
    for (const { standardPoints, largestPoints, simulatedPoints, ...weights } of golden.oven) {
      const ours = ovenUncertainty(weights);
      expect(Math.abs(ours.standardPoints / standardPoints - 1), JSON.stringify(weights)).toBeLessThan(1e-10);
      expect(Math.abs(ours.largestPoints / largestPoints - 1), JSON.stringify(weights)).toBeLessThan(1e-10);
      expect(Math.abs(ours.standardPoints / simulatedPoints - 1), JSON.stringify(weights)).toBeLessThan(0.005);
    }
  });

  test('5 g on a balance of three decimals is sure to a hundredth of a point; on one of two decimals to a tenth', () => {
    const weights = { dish: 20, dishAndFresh: 25, dishAndDry: 24.6 };
    expect(ovenUncertainty({ ...weights, stepG: 0.001 }).standardPoints).toBeLessThan(0.01);
    expect(ovenUncertainty({ ...weights, stepG: 0.01 }).standardPoints).toBeGreaterThan(0.05);
  });

  test('grows with the step, and the largest error is above one standard deviation', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.double({ min: 1e-4, max: 0.1, noNaN: true }),
        (fresh, lost, stepG) => {
          const weights = { dish: 10, dishAndFresh: 10 + fresh, dishAndDry: 10 + fresh * (1 - lost) };
          const one = ovenUncertainty({ ...weights, stepG });
          expect(ovenUncertainty({ ...weights, stepG: 2 * stepG }).standardPoints).toBeCloseTo(
            2 * one.standardPoints,
            9,
          );
          expect(one.largestPoints).toBeGreaterThan(one.standardPoints);
        },
      ),
      { seed: 20260313 },
    );
  });

  test('refuses a balance without a step', () => {
    expect(() => ovenUncertainty({ dish: 0, dishAndFresh: 5, dishAndDry: 4, stepG: 0 })).toThrow(/stepG.*got 0/);
  });
});

describe('twoStageUncertainty', () => {
  test('agrees with R', () => {
    for (const { first, second, firstPoints, secondPoints, standardPoints } of golden.stages) {
      const ours = twoStageUncertainty({
        firstStage: { percent: first, standardPoints: firstPoints },
        secondStage: { percent: second, standardPoints: secondPoints },
      });
      expect(Math.abs(ours - standardPoints)).toBeLessThan(1e-14);
    }
  });

  test('refuses a stage that lost everything', () => {
    const stage = { percent: 10, standardPoints: 0.1 };
    expect(() => twoStageUncertainty({ firstStage: { ...stage, percent: 100 }, secondStage: stage })).toThrow(
      /firstStage.*100/,
    );
  });
});

describe('duplicatesUncertainty', () => {
  test('half the difference, where that is more than the balance leaves', () => {
    const mean = duplicatesUncertainty(
      { moisturePercent: 8.1, standardPoints: 0.01 },
      { moisturePercent: 8.3, standardPoints: 0.01 },
    );
    expect(mean.from).toBe('difference');
    expect(mean.moisturePercent).toBeCloseTo(8.2, 12);
    expect(mean.standardPoints).toBeCloseTo(0.1, 12);
  });

  test('duplicates that happen to agree do not make a coarse balance fine', () => {
    const mean = duplicatesUncertainty(
      { moisturePercent: 8, standardPoints: 0.3 },
      { moisturePercent: 8, standardPoints: 0.4 },
    );
    expect(mean).toMatchObject({ from: 'balance', moisturePercent: 8 });
    expect(mean.standardPoints).toBeCloseTo(0.25, 12);
  });
});
