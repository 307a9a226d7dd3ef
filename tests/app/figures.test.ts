import { describe, expect, it } from 'vitest';
import { formatChance, formatCount, formatDate, formatGrams, formatPercentFigure } from '@/app/_format/figures';

describe('figures on screens', () => {
  it('parts thousands with a thin space and writes a true minus', () => {
    expect(formatCount(12345)).toBe('12\u202f345');
    expect(formatCount(999)).toBe('999');
    expect(formatCount(-1234567)).toBe('−1\u202f234\u202f567');
  });

  it('says 100 % and 0 % only of what is all but that', () => {
    expect(formatPercentFigure(0.9949)).toBe('99');
    expect(formatPercentFigure(0.996)).toBe('100');
    expect(formatPercentFigure(0.0051)).toBe('1');
    expect(formatPercentFigure(0.004)).toBe('0');
  });

  it('says chances as counts, and tiny or near certain ones in words', () => {
    expect(formatChance(0.69)).toBe('69 in 100');
    expect(formatChance(0.004)).toBe('under 1 in 100');
    expect(formatChance(0.996)).toBe('over 99 in 100');
  });

  it('writes dates without a time zone', () => {
    expect(formatDate('2026-03-02')).toBe('2 Mar 2026');
    expect(formatDate('2026-12-31')).toBe('31 Dec 2026');
  });

  it('writes grams with three figures', () => {
    expect(formatGrams(0.12345)).toBe('0.123 g');
    expect(formatGrams(1234)).toBe('1\u202f234 g');
  });
});
