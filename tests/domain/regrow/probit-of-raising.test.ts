import { expect, test } from 'vitest';
import { probitOfRaising } from '../../../lib/domain/regrow/probit-of-raising';
import { chanceOfAtLeast } from '../../../lib/domain/regrow/raising-chance';
import { normalCdf } from '../../../lib/domain/statistics/normal-distribution';

function largestError(plants: number, seeds: number): number {
  let largest = 0;
  for (let i = 1; i < 500; i += 1) {
    const chance = i / 500;
    const found = normalCdf(probitOfRaising(plants, seeds, chance, 1 - chance));
    largest = Math.max(largest, Math.abs(found - chanceOfAtLeast(plants, seeds, chance)));
  }
  return largest;
}

test('is within 0.001 of the exact binomial tail, for any plants, seeds and chance', () => {
  for (const plants of [2, 3, 5, 20, 60, 200, 1000]) {
    for (const spare of [1, 2, 3, 5, 10, 30, 100, 1000]) {
      expect(largestError(plants, plants + spare), `${plants} of ${plants + spare}`).toBeLessThan(0.001);
    }
  }
});

test('is within 0.0002 from five plants on where three seeds may fail', () => {
  for (const plants of [5, 20, 60, 200]) {
    for (const spare of [3, 5, 10, 30, 100]) expect(largestError(plants, plants + spare)).toBeLessThan(0.0002);
  }
});

test('is exact at both ends: one plant, and every seed must come up', () => {
  for (const seeds of [1, 2, 7, 300]) {
    expect(largestError(1, seeds)).toBeLessThan(1e-12);
    expect(largestError(seeds, seeds)).toBeLessThan(1e-12);
  }
});

test('stays finite and far from success for seed that is as good as dead, and the other way round', () => {
  expect(probitOfRaising(20, 400, 1e-19, 1)).toBeLessThan(-20);
  expect(probitOfRaising(20, 400, 1, 1e-19)).toBeGreaterThan(20);
  expect(Number.isFinite(probitOfRaising(20, 400, 1e-300, 1))).toBe(true);
});
