/**
 * Many experiments simulated with published constants: the fit must be centred on them, and its standard errors must
 * be as large as its errors are.
 */

import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, test } from 'vitest';
import { fitStorageExperiment } from '../../../../lib/domain/longevity/storage-experiment/fit-storage-experiment';
import type { StorageRow } from '../../../../lib/domain/longevity/storage-experiment/storage-row';
import { sigmaDays } from '../../../../lib/domain/longevity/viability-equation';
import { getLongevityConstants } from '../../../../lib/domain/reference/longevity-constants';
import { normalCdf } from '../../../../lib/domain/statistics/normal-distribution';

// Ellis & Hong 2007, Seed Sci. Technol. 35:432-444 (abstract).
const WHEAT = getLongevityConstants('wheat');
const EXPERIMENTS = 300;

function simulate(fraction: () => number): StorageRow[] {
  const rows: StorageRow[] = [];
  for (const [lot, initial] of [
    ['A', 2.1],
    ['B', 1.2],
  ] as const) {
    for (const temperatureC of [20, 35, 50]) {
      for (const moisturePercent of [6, 9, 14]) {
        const sigma = sigmaDays(WHEAT, { moisturePercent, temperatureC });
        for (const loss of [0, 0.8, 1.6, 2.4, 3.2]) {
          let germinated = 0;
          for (let seed = 0; seed < 50; seed++) if (fraction() < normalCdf(initial - loss)) germinated += 1;
          rows.push({ lot, moisturePercent, temperatureC, days: loss * sigma, sown: 50, germinated });
        }
      }
    }
  }
  return rows;
}

describe.each(['fixed', 'fitted'] as const)('temperature coefficients %s', (temperatureCoefficients) => {
  test('nineteen in twenty intervals of two standard errors hold the truth, and errors average to nothing', () => {
    const generator = xoroshiro128plus(20261125);
    const keys = temperatureCoefficients === 'fixed' ? (['KE', 'CW'] as const) : (['KE', 'CW', 'CH', 'CQ'] as const);
    const scores = new Map<string, number[]>(keys.map((key) => [key, []]));
    for (let experiment = 0; experiment < EXPERIMENTS; experiment++) {
      const rows = simulate(() => uniformFloat64(generator));
      const fit = fitStorageExperiment(rows, { temperatureCoefficients, held: WHEAT });
      if (!fit.ok) throw new Error(fit.message);
      for (const key of keys) {
        // Widened standard errors are for experiments that do scatter more; here they would flatter the coverage.
        const error = (fit.standardErrors[key] as number) / fit.goodness.standardErrorFactor;
        scores.get(key)?.push((fit.constants[key] - WHEAT[key]) / error);
      }
    }
    for (const [key, z] of scores) {
      const mean = z.reduce((sum, value) => sum + value, 0) / z.length;
      const covered = z.filter((value) => Math.abs(value) < 1.96).length / z.length;
      // With 300 experiments the mean of z has standard error 0.058, and a coverage of 0.95 one of 0.0126.
      expect(Math.abs(mean), `${key} mean z`).toBeLessThan(0.2);
      expect(covered, `${key} coverage`).toBeGreaterThan(0.912);
      expect(covered, `${key} coverage`).toBeLessThan(0.988);
    }
  }, 60_000);
});
