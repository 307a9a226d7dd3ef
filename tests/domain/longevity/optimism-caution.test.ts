import { describe, expect, it } from 'vitest';
import { optimismCaution } from '../../../lib/domain/longevity/optimism-caution';

// Half-lives seen in old collections: 40-60 years cool and dry, two or three times that at -18 to -20 C (Solberg et al. 2020,
// Front. Plant Sci. 11:1007). With 84.1345 % alive one probit is lost by the half-life.
const oneProbit = 0.8413447460685429;
const years = (count: number) => ({ daysPerProbit: count * 365.25, initialViability: oneProbit });

describe('optimismCaution', () => {
  it('speaks where the equation gives a half-life beyond those seen, and not before', () => {
    expect(optimismCaution({ ...years(59.9), temperatureC: 5 })).toBeNull();
    expect(optimismCaution({ ...years(60.1), temperatureC: 5 })).toContain('40 to 60 years in cool, dry stores');
    expect(optimismCaution({ ...years(179.9), temperatureC: -18 })).toBeNull();
    expect(optimismCaution({ ...years(180.1), temperatureC: -18 })).toContain('80 to 180 years in freezers');
  });

  it('takes a store for a freezer from -10 C down', () => {
    expect(optimismCaution({ ...years(100), temperatureC: -9.9 })).not.toBeNull();
    expect(optimismCaution({ ...years(100), temperatureC: -10 })).toBeNull();
  });

  it('has nothing to say of seed of which half is dead already', () => {
    expect(optimismCaution({ daysPerProbit: 1e9, initialViability: 0.4, temperatureC: 5 })).toBeNull();
  });

  it('refuses figures that cannot be', () => {
    expect(() => optimismCaution({ daysPerProbit: 0, initialViability: 0.9, temperatureC: 5 })).toThrow(
      /daysPerProbit/,
    );
    expect(() => optimismCaution({ daysPerProbit: 9, initialViability: 1, temperatureC: 5 })).toThrow(
      /initialViability/,
    );
  });
});
