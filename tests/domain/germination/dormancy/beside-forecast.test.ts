import { describe, expect, test } from 'vitest';
import { besideForecast } from '@/lib/domain/germination/dormancy/beside-forecast';

const stained = (lower: number, upper: number) => ({ shows: 'alive', interval: { lower, upper } }) as const;
const cut = (lower: number, upper: number) => ({ shows: 'at-most-alive', interval: { lower, upper } }) as const;
const band = { lower: 0.6, upper: 0.8 };

describe('tetrazolium beside the forecast', () => {
  test('agrees while the two have a point in common, up to the point itself', () => {
    expect(besideForecast(stained(0.5, 0.6), band)).toBe('agrees');
    expect(besideForecast(stained(0.8, 0.9), band)).toBe('agrees');
    expect(besideForecast(stained(0.1, 1), band)).toBe('agrees');
  });

  test('is below or above once they have none', () => {
    expect(besideForecast(stained(0.5, 0.5999), band)).toBe('below');
    expect(besideForecast(stained(0.8001, 0.9), band)).toBe('above');
  });
});

describe('a cut beside the forecast', () => {
  test('contradicts it only when less is firm than is said to be alive', () => {
    expect(besideForecast(cut(0.5, 0.5999), band)).toBe('below');
    expect(besideForecast(cut(0.5, 0.6), band)).toBe('allows');
  });

  test('never confirms it, however much is firm', () => {
    expect(besideForecast(cut(0.95, 1), band)).toBe('allows');
    expect(besideForecast(cut(0.65, 0.75), band)).toBe('allows');
  });
});

test('a band upside down, or without a figure, is refused', () => {
  expect(() => besideForecast(stained(0.1, 0.2), { lower: 0.8, upper: 0.6 })).toThrow(RangeError);
  expect(() => besideForecast(stained(0.1, 0.2), { lower: Number.NaN, upper: 0.6 })).toThrow(RangeError);
});
