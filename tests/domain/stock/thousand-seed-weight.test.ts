import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  replicateStatistics,
  thousandSeedWeight,
  thousandSeedWeightAtMoisture,
} from '../../../lib/domain/stock/thousand-seed-weight';
import golden from '../../golden/thousand-seed-weight.json';

// Published data: eight replicates of 100 Dimorphotheca seeds, http://www.frsa.org/SAfacts/App4tutorial.html
const DIMORPHOTHECA = [0.2224, 0.2134, 0.213, 0.2116, 0.2145, 0.2071, 0.2116, 0.2125];

describe('published data', () => {
  test('thousand-seed weight, variance, deviation and variation are those derived from the printed weights', () => {
    const result = thousandSeedWeight({ weightsG: DIMORPHOTHECA, seedsPerReplicate: 100 });
    expect(result.thousandSeedWeightG).toBeCloseTo(2.132625, 12);
    expect(Math.abs(result.variance - 1.845696e-5)).toBeLessThanOrEqual(0.5e-11);
    expect(Math.abs(result.standardDeviationG - 0.004296157)).toBeLessThanOrEqual(0.5e-9);
    expect(Math.abs(result.variationPercent - 2.014492)).toBeLessThanOrEqual(0.5e-6);
    expect(result.verdict).toBe('within-limit');
  });

  test('the variance is the printed formula (n Sx^2 - (Sx)^2) / (n (n - 1))', () => {
    const n = DIMORPHOTHECA.length;
    const sum = DIMORPHOTHECA.reduce((total, x) => total + x, 0);
    const squares = DIMORPHOTHECA.reduce((total, x) => total + x * x, 0);
    expect(replicateStatistics(DIMORPHOTHECA).variance / ((n * squares - sum * sum) / (n * (n - 1)))).toBeCloseTo(
      1,
      10,
    );
  });
});

test('agrees with R on mean, variance, deviation, variation, and what a second round drops', () => {
  for (const row of golden.rows) {
    const ours = replicateStatistics(row.weightsG);
    const why = JSON.stringify({ row, ours });
    expect(Math.abs(ours.meanG / row.mean - 1), why).toBeLessThan(1e-14);
    expect(Math.abs(ours.variance - row.variance), why).toBeLessThanOrEqual(1e-9 * row.variance);
    expect(Math.abs(ours.standardDeviationG - row.sd), why).toBeLessThanOrEqual(1e-9 * row.sd);
    expect(Math.abs(ours.variationPercent - row.cv), why).toBeLessThanOrEqual(1e-9 * row.cv);
    if (row.weightsG.length < 16 || ours.variationPercent <= 4) continue;
    const settled = thousandSeedWeight({ weightsG: row.weightsG, seedsPerReplicate: 1000 });
    expect(settled.dropped).toHaveLength(row.dropped);
    expect(Math.abs(settled.thousandSeedWeightG / row.keptMean - 1), why).toBeLessThan(1e-14);
  }
  expect(golden.rows.some((row) => row.weightsG.length === 16 && row.dropped > 0)).toBe(true);
});

/** n weights about a mean, alternating, whose variation is exactly `cv` percent. */
function weightsVarying(cv: number, n: number): number[] {
  const step = (cv / 100) * Math.sqrt((n - 1) / n);
  return Array.from({ length: n }, (_, i) => 5 * (1 + (i % 2 === 0 ? step : -step)));
}

describe('variation limit (from memory: 4.0 %, chaffy seed 6.0 %)', () => {
  test.each([
    ['ordinary', 3.99, 'within-limit'],
    ['ordinary', 4.01, 'weigh-eight-more'],
    ['chaffy', 5.99, 'within-limit'],
    ['chaffy', 6.01, 'weigh-eight-more'],
  ] as const)('%s seed varying by %d %%: %s', (surface, cv, verdict) => {
    const weightsG = weightsVarying(cv, 8);
    expect(thousandSeedWeight({ weightsG, seedsPerReplicate: 100, surface }).verdict).toBe(verdict);
  });

  test('after sixteen the weight is settled, without those more than two deviations off', () => {
    const weightsG = [...Array.from({ length: 15 }, () => 5), 8];
    const settled = thousandSeedWeight({ weightsG, seedsPerReplicate: 100 });
    expect(settled).toMatchObject({ verdict: 'from-sixteen', dropped: [8], thousandSeedWeightG: 50 });
  });

  test('sixteen that agree drop none, however far the farthest lies in deviations', () => {
    const weightsG = [...Array.from({ length: 15 }, () => 5), 5.05];
    expect(thousandSeedWeight({ weightsG, seedsPerReplicate: 100 })).toMatchObject({
      verdict: 'within-limit',
      dropped: [],
    });
  });

  test('fewer than eight: the limit was not made for them; between eight and sixteen: weigh on', () => {
    expect(thousandSeedWeight({ weightsG: weightsVarying(1, 6), seedsPerReplicate: 100 }).verdict).toBe('too-few');
    expect(thousandSeedWeight({ weightsG: weightsVarying(9, 14), seedsPerReplicate: 100 }).verdict).toBe(
      'weigh-eight-more',
    );
  });
});

describe('at another moisture', () => {
  test('the dry matter of a seed stays: 50 g at 12 % is 47.3 g at 7 %', () => {
    // 50 * 88 / 93
    expect(
      thousandSeedWeightAtMoisture({ thousandSeedWeightG: 50, moisturePercent: 12, targetMoisturePercent: 7 }),
    ).toBeCloseTo(47.31183, 5);
  });

  test('there and back again', () => {
    const moistures = fc.double({ min: 0, max: 60, noNaN: true });
    fc.assert(
      fc.property(moistures, moistures, (moisturePercent, targetMoisturePercent) => {
        const there = thousandSeedWeightAtMoisture({ thousandSeedWeightG: 3, moisturePercent, targetMoisturePercent });
        const back = thousandSeedWeightAtMoisture({
          thousandSeedWeightG: there,
          moisturePercent: targetMoisturePercent,
          targetMoisturePercent: moisturePercent,
        });
        expect(back).toBeCloseTo(3, 12);
      }),
      { seed: 20260318 },
    );
  });
});

test('refuses a single replicate, weights of nothing and half seeds', () => {
  expect(() => replicateStatistics([5])).toThrow(/at least 2.*got 1/);
  expect(() => replicateStatistics([5, 0])).toThrow(/got 0/);
  expect(() => thousandSeedWeight({ weightsG: [5, 5], seedsPerReplicate: 0 })).toThrow(/seedsPerReplicate/);
});
