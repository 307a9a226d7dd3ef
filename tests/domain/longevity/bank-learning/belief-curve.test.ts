import { describe, expect, it } from 'vitest';
import { beliefCurve } from '../../../../lib/domain/longevity/bank-learning/belief-curve';

describe('beliefCurve', () => {
  it('encloses an area of one and is highest at the mean', () => {
    const curve = beliefCurve({ mean: 1.5, sd: 0.4 }, { from: -1, to: 4, steps: 200 });
    const area = curve.reduce((sum, { density }) => sum + density * (5 / 200), 0);
    expect(area).toBeCloseTo(1, 6);
    const top = curve.reduce((best, point) => (point.density > best.density ? point : best));
    expect(top.x).toBeCloseTo(1.5, 6);
    expect(top.density).toBeCloseTo(0.398942280401433 / 0.4, 6);
  });

  it('begins and ends where the axis does', () => {
    const curve = beliefCurve({ mean: 0, sd: 1 }, { from: -2, to: 2, steps: 4 });
    expect(curve.map(({ x }) => x)).toEqual([-2, -1, 0, 1, 2]);
  });

  it('refuses an axis that runs backwards and a belief without spread', () => {
    expect(() => beliefCurve({ mean: 0, sd: 1 }, { from: 1, to: 1 })).toThrow(RangeError);
    expect(() => beliefCurve({ mean: 0, sd: 0 }, { from: 0, to: 1 })).toThrow(RangeError);
    expect(() => beliefCurve({ mean: 0, sd: 1 }, { from: 0, to: 1, steps: 0 })).toThrow(RangeError);
  });
});
