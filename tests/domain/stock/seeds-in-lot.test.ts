import { describe, expect, it } from 'vitest';
import { seedsInLot } from '@/lib/domain/stock/seeds-in-lot';

const nothing = { seedCount: null, cleanWeightG: null, thousandSeedWeightG: null, usualSeedsPerGram: null };

describe('seedsInLot', () => {
  it('believes a count', () => {
    expect(seedsInLot({ ...nothing, seedCount: 420 })).toEqual({
      ok: true,
      seeds: 420,
      thousandSeedWeightG: null,
      from: 'counted',
    });
  });

  it('works out the thousand-seed weight from count and weight', () => {
    expect(seedsInLot({ ...nothing, seedCount: 500, cleanWeightG: 1.25 })).toMatchObject({ thousandSeedWeightG: 2.5 });
  });

  it('turns a weight into seeds by the own thousand-seed weight before the usual one', () => {
    const weighed = seedsInLot({ ...nothing, cleanWeightG: 10, thousandSeedWeightG: 2.5, usualSeedsPerGram: 100 });
    expect(weighed).toEqual({ ok: true, seeds: 4000, thousandSeedWeightG: 2.5, from: 'weighed' });
  });

  it('estimates from the usual seed, and does not call that the own thousand-seed weight', () => {
    expect(seedsInLot({ ...nothing, cleanWeightG: 10, usualSeedsPerGram: 395 })).toEqual({
      ok: true,
      seeds: 3950,
      thousandSeedWeightG: null,
      from: 'estimated',
    });
  });

  it('says what is missing', () => {
    expect(seedsInLot(nothing)).toEqual({ ok: false, reason: 'amount-needed' });
    expect(seedsInLot({ ...nothing, thousandSeedWeightG: 2.5 })).toEqual({ ok: false, reason: 'amount-needed' });
    expect(seedsInLot({ ...nothing, cleanWeightG: 10 })).toEqual({ ok: false, reason: 'seed-size-needed' });
    expect(seedsInLot({ ...nothing, cleanWeightG: 0.001, thousandSeedWeightG: 300 })).toEqual({
      ok: false,
      reason: 'no-whole-seed',
    });
  });

  it('takes count and weights that are up to a quarter apart, and no more', () => {
    const byWeight = { ...nothing, cleanWeightG: 1, thousandSeedWeightG: 1 }; // 1000 seeds by weight
    expect(seedsInLot({ ...byWeight, seedCount: 750 })).toMatchObject({ ok: true, seeds: 750 });
    expect(seedsInLot({ ...byWeight, seedCount: 749 })).toEqual({
      ok: false,
      reason: 'figures-disagree',
      seedsByWeight: 1000,
    });
    expect(seedsInLot({ ...byWeight, seedCount: 1333 })).toMatchObject({ ok: true });
    expect(seedsInLot({ ...byWeight, seedCount: 1334 })).toMatchObject({ ok: false });
  });
});
