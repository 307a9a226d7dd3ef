import { expect, test } from 'vitest';
import { replicateHeterogeneity } from '../../../lib/domain/germination/heterogeneity';
import { expectClose, goldenRows } from '../../support/golden-table';

interface Row {
  trials: number[];
  normal: number[];
  chiSquare: number;
  degreesOfFreedom: number;
  pValue: number;
  correlation: number;
}

test('chi-square, p-value and correlation agree with R, for unequal dishes too', () => {
  for (const row of goldenRows<Row>('heterogeneity', 'rows')) {
    const found = replicateHeterogeneity(
      row.trials.map((seeds, i) => ({ seeds, normal: row.normal[i] ?? Number.NaN })),
    );
    if (!found) throw new Error('expected a test of heterogeneity');
    // Not relative alone: dishes that agree exactly leave R a dust of 1e-30.
    expect(Math.abs(found.chiSquare - row.chiSquare), JSON.stringify(row)).toBeLessThanOrEqual(
      1e-12 * (1 + row.chiSquare),
    );
    expect(found.degreesOfFreedom).toBe(row.degreesOfFreedom);
    expectClose(found.pValue, row.pValue, 1e-9, row);
    expect(Math.abs(found.intraReplicateCorrelation - row.correlation), JSON.stringify(row)).toBeLessThanOrEqual(1e-9);
  }
});

test('one dish all alive and one all dead are as correlated as can be', () => {
  const found = replicateHeterogeneity([
    { seeds: 50, normal: 50 },
    { seeds: 50, normal: 0 },
  ]);
  expect(found?.intraReplicateCorrelation).toBe(1);
});

test('dishes closer than chance have a correlation of 0, not below', () => {
  const found = replicateHeterogeneity(Array.from({ length: 4 }, () => ({ seeds: 100, normal: 80 })));
  expect(found).toEqual({ chiSquare: 0, degreesOfFreedom: 3, pValue: 1, intraReplicateCorrelation: 0 });
});

test('all alive or all dead differ in nothing', () => {
  for (const normal of [0, 25]) {
    expect(replicateHeterogeneity(Array.from({ length: 3 }, () => ({ seeds: 25, normal })))).toEqual({
      chiSquare: 0,
      degreesOfFreedom: 2,
      pValue: 1,
      intraReplicateCorrelation: 0,
    });
  }
});

test('one seed a dish says nothing about likeness within a dish', () => {
  const found = replicateHeterogeneity([1, 0, 1, 1].map((normal) => ({ seeds: 1, normal })));
  expect(found?.intraReplicateCorrelation).toBe(0);
});

test('one dish cannot disagree with itself', () => {
  expect(replicateHeterogeneity([{ seeds: 100, normal: 90 }])).toBeNull();
});
