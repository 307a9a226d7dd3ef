import { describe, expect, it } from 'vitest';
import { lowMoistureLimitPercent, withLowMoistureLimit } from '../../../lib/domain/longevity/low-moisture-limit';
import golden from '../../golden/storage-life.json';
import { seedOf } from './seed-kinds';

describe('lowMoistureLimitPercent', () => {
  it('is the limit that came with the constants, or the moisture at rest in air of 10.6 % (R, to 1e-12)', () => {
    for (const row of golden.seeds) {
      expect(Math.abs(lowMoistureLimitPercent(seedOf(row, row)) / row.low - 1), row.crop).toBeLessThan(1e-12);
    }
  });

  // Ellis, Hong & Roberts 1989, Ann. Bot. 63:601-611 (abstract read): twelve species, 2.4 % (niger, oily) to 6.2 % (pea, starchy).
  it('lies among the published limits of twelve species, lower for oily seed', () => {
    const starchy = lowMoistureLimitPercent({ constantsRange: {}, oilFraction: 0.02 });
    const oily = lowMoistureLimitPercent({ constantsRange: {}, oilFraction: 0.4 });
    expect(starchy).toBeLessThan(6.2);
    expect(oily).toBeLessThan(starchy);
    expect(oily).toBeGreaterThan(2.4);
  });
});

describe('withLowMoistureLimit', () => {
  it('fills the limit in, and leaves a known one alone', () => {
    const unknown = seedOf({ KE: 8, CW: 4, CH: 0.04, CQ: 0.0004 });
    expect(withLowMoistureLimit(unknown).constantsRange.lowMoistureLimitPercent).toBe(lowMoistureLimitPercent(unknown));
    const known = seedOf(unknown.constants, { limit: 3.6 });
    expect(withLowMoistureLimit(known)).toBe(known);
  });
});
