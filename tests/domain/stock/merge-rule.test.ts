import { describe, expect, it } from 'vitest';
import { judgeMerge } from '@/lib/domain/stock/merge-rule';

describe('which packet is kept in a merge', () => {
  it('is the one whose seed has aged more', () => {
    expect(judgeMerge(0.4, 0.1)).toBe('fine');
    expect(judgeMerge(0.1, 0.4)).toBe('poured-aged-more');
  });

  it('is either where they aged alike, to a hundredth of a probit', () => {
    expect(judgeMerge(0.3, 0.3)).toBe('fine');
    expect(judgeMerge(0.3, 0.3099)).toBe('fine');
    expect(judgeMerge(0.3, 0.3101)).toBe('poured-aged-more');
  });

  it('is the one whose ageing cannot be reckoned, lest that be forgotten', () => {
    expect(judgeMerge(null, 5)).toBe('fine');
    expect(judgeMerge(5, null)).toBe('poured-aged-more');
    expect(judgeMerge(null, null)).toBe('fine');
  });

  it('refuses ageing that is none', () => {
    expect(() => judgeMerge(-0.1, 0)).toThrow(/got -0.1/);
    expect(() => judgeMerge(0, Number.NaN)).toThrow(/got NaN/);
    expect(() => judgeMerge(Number.POSITIVE_INFINITY, 0)).toThrow(RangeError);
  });
});
