import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ageingProbits } from '../../../lib/domain/longevity/ageing';

const barley = { KE: 9.983, CW: 5.896, CH: 0.04, CQ: 0.000428 };
const period = fc.record({
  days: fc.double({ min: 0, max: 20_000, noNaN: true }),
  temperatureC: fc.double({ min: -25, max: 50, noNaN: true }),
  moisturePercent: fc.double({ min: 3, max: 15, noNaN: true }),
});

describe('ageingProbits', () => {
  it('counts one probit in sigma days', () => {
    // sigma of barley at 10 % and 20 C is 1305.57 days (derived in R, six digits)
    const probits = ageingProbits(barley, [{ days: 1305.57, temperatureC: 20, moisturePercent: 10 }]);
    expect(Math.abs(probits - 1)).toBeLessThan(5e-6);
  });

  it('loses nothing in no time', () => {
    expect(ageingProbits(barley, [])).toBe(0);
    expect(ageingProbits(barley, [{ days: 0, temperatureC: 20, moisturePercent: 10 }])).toBe(0);
  });

  it('adds: two histories one after the other lose the sum, in either order', () => {
    fc.assert(
      fc.property(fc.array(period, { maxLength: 6 }), fc.array(period, { maxLength: 6 }), (before, after) => {
        const sum = ageingProbits(barley, before) + ageingProbits(barley, after);
        const tolerance = 1e-12 * Math.max(sum, 1e-300);
        expect(Math.abs(ageingProbits(barley, [...before, ...after]) - sum)).toBeLessThanOrEqual(tolerance);
        expect(Math.abs(ageingProbits(barley, [...after, ...before]) - sum)).toBeLessThanOrEqual(tolerance);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it.each([-1, Number.NaN, Number.POSITIVE_INFINITY])('refuses a period of %s days', (days) => {
    expect(() => ageingProbits(barley, [{ days, temperatureC: 20, moisturePercent: 10 }])).toThrow(RangeError);
  });
});
