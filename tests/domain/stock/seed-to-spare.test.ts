import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SEEDS_KEPT_FOR_TESTS, seedToSpare } from '@/lib/domain/stock/seed-to-spare';

const seeds = fc.integer({ min: 0, max: 20_000 });
const needed = fc.integer({ min: 1, max: 5_000 });
const spareOf = (active: number, base: number, forRegrowing: number) => {
  const answer = seedToSpare({ active, base, forRegrowing });
  if (!answer.ok) throw new Error('a lot with a forecast has an answer');
  return answer;
};

describe('seedToSpare', () => {
  it('keeps two regrowings and the seed of the tests, to the seed', () => {
    expect(seedToSpare({ active: 1000, base: 0, forRegrowing: 300 })).toEqual({
      ok: true,
      spare: 500,
      kept: 500,
    });
    expect(spareOf(500, 0, 300).spare).toBe(0);
    expect(spareOf(501, 0, 300).spare).toBe(1);
    expect(spareOf(499, 0, 300).spare).toBe(0);
  });

  it('counts base stock as kept, and gives none of it away', () => {
    expect(spareOf(300, 600, 300).spare).toBe(300);
    expect(spareOf(0, 5000, 300).spare).toBe(0);
    expect(spareOf(300, 400, 300).spare).toBe(200);
  });

  it('says so where nobody can reckon, rather than giving a figure', () => {
    expect(seedToSpare({ active: 5000, base: 0, forRegrowing: null })).toEqual({ ok: false, reason: 'no-forecast' });
    const dead = seedToSpare({ active: 5000, base: 0, forRegrowing: Number.POSITIVE_INFINITY });
    expect(dead).toEqual({ ok: false, reason: 'may-be-dead' });
  });

  it('refuses what is no count', () => {
    for (const wrong of [-1, 0.5, Number.NaN]) {
      expect(() => seedToSpare({ active: wrong, base: 0, forRegrowing: 1 })).toThrow(/seedToSpare: active/);
      expect(() => seedToSpare({ active: 0, base: wrong, forRegrowing: 1 })).toThrow(/seedToSpare: base/);
      expect(() => seedToSpare({ active: 0, base: 0, forRegrowing: wrong })).toThrow(/seedToSpare: forRegrowing/);
    }
    expect(() => seedToSpare({ active: 0, base: 0, forRegrowing: 0 })).toThrow(RangeError);
  });

  it('never gives more than there is in active stock, and leaves all that is to be kept', () => {
    fc.assert(
      fc.property(seeds, seeds, needed, (active, base, forRegrowing) => {
        const { spare, kept } = spareOf(active, base, forRegrowing);
        expect(spare).toBeGreaterThanOrEqual(0);
        expect(spare).toBeLessThanOrEqual(active);
        expect(kept).toBe(forRegrowing + SEEDS_KEPT_FOR_TESTS);
        if (spare > 0) expect(active + base - spare).toBeGreaterThanOrEqual(kept);
      }),
    );
  });

  it('gives all that can go: one seed more would come from base stock or from what is kept', () => {
    fc.assert(
      fc.property(seeds, seeds, needed, (active, base, forRegrowing) => {
        const { spare, kept } = spareOf(active, base, forRegrowing);
        expect(spare + 1 > active || active + base - (spare + 1) < kept).toBe(true);
      }),
    );
  });

  it('falls by what was given, so that sharing in two goes gives no more than in one', () => {
    fc.assert(
      fc.property(
        seeds,
        seeds,
        needed,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (active, base, forRegrowing, share) => {
          const { spare } = spareOf(active, base, forRegrowing);
          const given = Math.floor(spare * share);
          expect(spareOf(active - given, base, forRegrowing).spare).toBe(spare - given);
        },
      ),
    );
  });

  it('falls when more seed is needed, and does not fall when seed is added', () => {
    fc.assert(
      fc.property(seeds, seeds, needed, fc.integer({ min: 1, max: 500 }), (active, base, forRegrowing, more) => {
        const { spare } = spareOf(active, base, forRegrowing);
        expect(spareOf(active, base, forRegrowing + more).spare).toBeLessThanOrEqual(spare);
        expect(spareOf(active + more, base, forRegrowing).spare).toBeGreaterThanOrEqual(spare);
        expect(spareOf(active, base + more, forRegrowing).spare).toBeGreaterThanOrEqual(spare);
      }),
    );
  });
});
