import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { moistureAfterPredrying, moistureFromDuplicates, moistureFromOven } from '../../../lib/domain/moisture/oven';

describe('moistureFromOven', () => {
  test('divides the loss by the FRESH weight of the seed, without its dish', () => {
    // 20 g dish, 5 g of seed, 0.4 g lost: 8 % of fresh weight (not 0.4/4.6, and not 0.4/25).
    expect(moistureFromOven({ dish: 20, dishAndFresh: 25, dishAndDry: 24.6 })).toBeCloseTo(8, 10);
  });

  test('accepts a tared balance and seed that lost nothing', () => {
    expect(moistureFromOven({ dish: 0, dishAndFresh: 5, dishAndDry: 5 })).toBe(0);
  });

  test('does not depend on the weight of the dish', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.double({ min: 0.5, max: 20, noNaN: true }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (dish, fresh, lost) => {
          const moisture = moistureFromOven({
            dish,
            dishAndFresh: dish + fresh,
            dishAndDry: dish + fresh * (1 - lost),
          });
          expect(moisture).toBeCloseTo(100 * lost, 6);
        },
      ),
      { seed: 20260103 },
    );
  });

  test.each([
    { dish: -1, dishAndFresh: 25, dishAndDry: 24 },
    { dish: 20, dishAndFresh: 20, dishAndDry: 20 },
    { dish: 20, dishAndFresh: 25, dishAndDry: 25.1 },
    { dish: 20, dishAndFresh: 25, dishAndDry: 20 },
    { dish: 20, dishAndFresh: 25, dishAndDry: Number.NaN },
    { dish: 20, dishAndFresh: Number.POSITIVE_INFINITY, dishAndDry: 24 },
  ])('refuses weights out of order: %o', (weights) => {
    expect(() => moistureFromOven(weights)).toThrow(/moistureFromOven/);
  });
});

describe('moistureAfterPredrying', () => {
  test('adds the two stages on the ORIGINAL weight (formula from memory, derived here)', () => {
    // 100 g loses 20 g, the remaining 80 g loses 10 % = 8 g: 28 g of the first 100.
    expect(moistureAfterPredrying({ firstStagePercent: 20, secondStagePercent: 10 })).toBeCloseTo(28, 12);
  });

  test('refuses a stage outside [0, 100)', () => {
    expect(() => moistureAfterPredrying({ firstStagePercent: 100, secondStagePercent: 1 })).toThrow(
      /firstStagePercent/,
    );
    expect(() => moistureAfterPredrying({ firstStagePercent: 1, secondStagePercent: -1 })).toThrow(
      /secondStagePercent/,
    );
  });
});

describe('moistureFromDuplicates (tolerance 0.2 points: from memory for seed, published for grain)', () => {
  test('reports the mean when the samples differ by exactly the tolerance', () => {
    // 8.3 - 8.1 is 0.2000000000000011 in binary: still 0.2 on the balance.
    expect(moistureFromDuplicates({ firstPercent: 8.1, secondPercent: 8.3 })).toMatchObject({ ok: true });
    const agreed = moistureFromDuplicates({ firstPercent: 8.1, secondPercent: 8.3 });
    expect(agreed.ok && agreed.moisturePercent).toBeCloseTo(8.2, 10);
  });

  test('gives no moisture when they differ by more', () => {
    expect(moistureFromDuplicates({ firstPercent: 8.31, secondPercent: 8.1 })).toMatchObject({
      ok: false,
      reason: 'duplicates-differ',
      tolerancePoints: 0.2,
    });
  });

  test('refuses impossible moistures and tolerances', () => {
    expect(() => moistureFromDuplicates({ firstPercent: -1, secondPercent: 8 })).toThrow(/firstPercent/);
    expect(() => moistureFromDuplicates({ firstPercent: 8, secondPercent: 8, tolerancePoints: 0 })).toThrow(
      /tolerance/,
    );
  });
});
