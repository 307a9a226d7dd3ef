import { describe, expect, it } from 'vitest';
import { yearsInWords } from '../../../lib/domain/longevity/years-in-words';

describe('yearsInWords', () => {
  it.each([
    [0, '0 days'],
    [1, '1 day'],
    [20.4, '20 days'],
    [61, '2 months'],
    [365.25, '12 months'],
    [700, '23 months'],
    [730.5, '2 years'],
    [4.46 * 365.25, '4.5 years'],
    [9.94 * 365.25, '9.9 years'],
    [9.96 * 365.25, '10 years'],
    [31.2 * 365.25, '31 years'],
    [200 * 365.25, '200 years'],
    [200.1 * 365.25, 'more than 200 years'],
    [Number.POSITIVE_INFINITY, 'more than 200 years'],
  ])('says %s days as %s', (days, words) => {
    expect(yearsInWords(days)).toBe(words);
  });

  it('refuses days before today', () => {
    expect(() => yearsInWords(-1)).toThrow(RangeError);
    expect(() => yearsInWords(Number.NaN)).toThrow(RangeError);
  });
});
