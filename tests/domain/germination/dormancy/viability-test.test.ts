import { describe, expect, test } from 'vitest';
import { cutResult, tetrazoliumResult } from '../../../../lib/domain/germination/dormancy/viability-test';

describe('tetrazolium', () => {
  test('only seed stained as it should be counts as alive', () => {
    const result = tetrazoliumResult({ stainedNormally: 45, stainedAbnormally: 3, unstained: 2 });
    expect(result).toMatchObject({ seeds: 50, alive: 45, shows: 'alive' });
    // R prop.test(45, 50, correct = FALSE)
    expect(result.estimate.interval.lower).toBeCloseTo(0.7864, 4);
    expect(result.estimate.interval.upper).toBeCloseTo(0.9565, 4);
  });

  test('none and all stained keep their bound', () => {
    expect(tetrazoliumResult({ stainedNormally: 0, stainedAbnormally: 0, unstained: 20 }).estimate.interval.lower).toBe(
      0,
    );
    expect(tetrazoliumResult({ stainedNormally: 1, stainedAbnormally: 0, unstained: 0 }).estimate.interval.upper).toBe(
      1,
    );
  });

  test('the level is that asked for', () => {
    const counts = { stainedNormally: 45, stainedAbnormally: 3, unstained: 2 };
    expect(tetrazoliumResult(counts, 0.8).estimate.interval.level).toBe(0.8);
  });
});

describe('cutting', () => {
  const counts = { firm: 70, empty: 12, insectDamaged: 8, dead: 10 };

  test('firm seed is the most that can be alive', () => {
    expect(cutResult(counts)).toMatchObject({ seeds: 100, alive: 70, shows: 'at-most-alive' });
    expect(cutResult(counts).estimate.proportion).toBe(0.7);
  });

  test('empty and insect-damaged seed is what cleaning could take out; of the rest the firm share is given', () => {
    const result = cutResult(counts);
    expect(result.worthless.proportion).toBe(0.2);
    expect(result.firmOfFull?.proportion).toBe(70 / 80);
  });

  test('no full seed at all: no share of the full ones', () => {
    expect(cutResult({ firm: 0, empty: 20, insectDamaged: 5, dead: 0 }).firmOfFull).toBeNull();
  });
});

test('refuses what is no count, and nothing counted', () => {
  expect(() => tetrazoliumResult({ stainedNormally: -1, stainedAbnormally: 0, unstained: 2 })).toThrow(
    /stainedNormally/,
  );
  expect(() => cutResult({ firm: 0.5, empty: 0, insectDamaged: 0, dead: 0 })).toThrow(/firm/);
  expect(() => cutResult({ firm: 0, empty: 0, insectDamaged: 0, dead: 0 })).toThrow(/at least 1/);
});
