import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chanceOfKeepingAllele } from '../../../../lib/domain/regrow/diversity/keeping-alleles';
import {
  chancesOfStaying,
  sizeOverGenerations,
  varietyKept,
} from '../../../../lib/domain/regrow/diversity/loss-over-generations';
import { expectClose, goldenRows } from '../../../support/golden-table';

function staying(effectiveSize: number, frequency: number, generations: number): number[] {
  const answer = chancesOfStaying({ effectiveSize, frequency, generations });
  if (!answer.ok) throw new Error(answer.reason);
  return answer.chances;
}

describe('loss over generations', () => {
  it('equals R: the exact chain of draws', () => {
    type Row = { gametes: number; frequency: number; generation: number; chance: number };
    for (const row of goldenRows<Row>('diversity', 'staying')) {
      const chance = staying(row.gametes / 2, row.frequency, row.generation).at(-1) as number;
      expectClose(chance, row.chance, 1e-9, row);
    }
  });

  it('of one generation is the chance of keeping an allele', () => {
    for (const plants of [1, 5, 60]) {
      const kept = chanceOfKeepingAllele({ plants, frequency: 0.03 });
      expectClose(staying(plants, 0.03, 1)[0] as number, kept, 1e-9, plants);
    }
  });

  it('only takes: each generation keeps no more than the last, and more plants keep more', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 30 }),
        fc.double({ min: 0.01, max: 0.9, noNaN: true }),
        (size, frequency) => {
          const few = staying(size, frequency, 6);
          const many = staying(size + 5, frequency, 6);
          few.forEach((chance, generation) => {
            if (generation > 0) expect(chance).toBeLessThanOrEqual((few[generation - 1] as number) + 1e-12);
            expect(many[generation] as number).toBeGreaterThanOrEqual(chance - 1e-12);
          });
        },
      ),
      { seed: 315, numRuns: 40 },
    );
  });

  it('in the long run leaves an allele with its first frequency', () => {
    expect(staying(4, 0.3, 100).at(-1)).toBeCloseTo(0.3, 3);
  });

  it('says so when there are too many gametes for the chain', () => {
    expect(chancesOfStaying({ effectiveSize: 301, frequency: 0.1, generations: 2 })).toEqual({
      ok: false,
      reason: 'too-many-plants',
    });
    expect(chancesOfStaying({ effectiveSize: 300, frequency: 0.1, generations: 1 }).ok).toBe(true);
  });

  it.each([
    { effectiveSize: 0.2, frequency: 0.1, generations: 1 },
    { effectiveSize: 5, frequency: 1, generations: 1 },
    { effectiveSize: 5, frequency: 0.1, generations: 0 },
    { effectiveSize: 5, frequency: 0.1, generations: 101 },
  ])('refuses %o', (input) => {
    expect(() => chancesOfStaying(input)).toThrow(RangeError);
  });
});

describe('variety kept', () => {
  it('is all of it before any regrowing, and half of it after one from one plant', () => {
    expect(varietyKept([])).toBe(1);
    expect(varietyKept([1])).toBe(0.5);
  });

  it('is ruled by the smallest regrowing: the harmonic mean, not the mean', () => {
    const sizes = [50, 50, 2, 50];
    const size = sizeOverGenerations(sizes);
    expectClose(size, 4 / (3 / 50 + 1 / 2), 1e-12, sizes);
    expect(size).toBeLessThan(8);
    expect(varietyKept(sizes)).toBeCloseTo(varietyKept([size, size, size, size]), 1);
  });

  it('does not depend on the order of regrowings', () => {
    expectClose(varietyKept([3, 40, 12]), varietyKept([40, 12, 3]), 1e-15, []);
  });

  it('refuses sizes that cannot be', () => {
    expect(() => varietyKept([0.5])).toThrow(RangeError);
    expect(() => sizeOverGenerations([])).toThrow(RangeError);
    expect(() => sizeOverGenerations([0])).toThrow(RangeError);
  });
});
