import { describe, expect, it } from 'vitest';
import { climateCoverage } from '../../../lib/domain/longevity/climate-coverage';
import { storeClimate } from '../../../lib/domain/longevity/store-climate';

const climateAt = (hours: number[]) =>
  storeClimate(
    { epochSeconds: Float64Array.from(hours, (hour) => hour * 3600), temperatureC: Float64Array.from(hours, () => 5) },
    { temperatureC: 5 },
  );

describe('climateCoverage', () => {
  it('counts what lies between readings as read, and gaps and both ends as assumed', () => {
    // read: noon of day 0 to noon of day 1; gap of three days; noon of day 4 to noon of day 5
    const coverage = climateCoverage(climateAt([12, 24, 36, 108, 132]), -2, 8);
    expect(coverage.daysRead).toBeCloseTo(2, 12);
    expect(coverage.daysAssumed).toBeCloseTo(8, 12);
    expect(coverage.shareRead).toBeCloseTo(0.2, 12);
  });

  it('assumes every day of a store without readings', () => {
    expect(climateCoverage(climateAt([]), 100, 110)).toEqual({ daysRead: 0, daysAssumed: 10, shareRead: 0 });
  });

  it('calls an empty stretch wholly read', () => {
    expect(climateCoverage(climateAt([12]), 5, 5)).toEqual({ daysRead: 0, daysAssumed: 0, shareRead: 1 });
  });
});
