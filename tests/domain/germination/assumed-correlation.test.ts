import { describe, expect, it } from 'vitest';
import { assumedCorrelation } from '../../../lib/domain/germination/assumed-correlation';
import { replicateHeterogeneity } from '../../../lib/domain/germination/heterogeneity';

const dishesOf = (...counted: number[]) => counted.map((count) => ({ seeds: 50, counted: count }));
const EVEN = dishesOf(45, 44, 46, 43);
const UNEVEN = dishesOf(48, 47, 46, 35);
const VERY_UNEVEN = dishesOf(50, 49, 1, 3);

describe('how alike the seeds of a dish are taken to be', () => {
  it('not at all while dishes agree, or there is one dish, or no test', () => {
    expect(assumedCorrelation([EVEN, dishesOf(20)])).toBe(0);
    expect(assumedCorrelation([])).toBe(0);
  });

  it('not at all while they differ as chance allows once in a hundred times', () => {
    const doubtful = dishesOf(48, 47, 46, 39);
    const p = replicateHeterogeneity(doubtful.map(({ seeds, counted }) => ({ seeds, normal: counted })))?.pValue;
    expect(p).toBeGreaterThan(0.01);
    expect(p).toBeLessThan(0.06);
    expect(assumedCorrelation([doubtful])).toBe(0);
  });

  it('as its dishes say where they clearly differ, for all tests of the lot', () => {
    const estimate = replicateHeterogeneity(UNEVEN.map(({ seeds, counted }) => ({ seeds, normal: counted })));
    expect(estimate?.intraReplicateCorrelation).toBeGreaterThan(0.02);
    expect(assumedCorrelation([EVEN, UNEVEN])).toBe(estimate?.intraReplicateCorrelation);
  });

  it('at most one half, and the most uneven test decides', () => {
    expect(assumedCorrelation([UNEVEN, VERY_UNEVEN, EVEN])).toBe(0.5);
  });
});
