import fc from 'fast-check';
import { expect, it } from 'vitest';
import { thinReadings } from '@/lib/domain/logger/thin-readings';

it('loses no peak and no trough, whatever is drawn', () => {
  const values = fc.array(fc.integer({ min: -300, max: 300 }), { minLength: 1, maxLength: 200 });
  fc.assert(
    fc.property(values, fc.integer({ min: 1, max: 50 }), (temperatures, stretches) => {
      const at = Float64Array.from(temperatures, (_, index) => index * 60);
      const thin = thinReadings(at, Float64Array.from(temperatures), stretches);
      expect(thin.length).toBeLessThanOrEqual(stretches);
      expect(Math.min(...thin.map(({ lowest }) => lowest))).toBe(Math.min(...temperatures));
      expect(Math.max(...thin.map(({ highest }) => highest))).toBe(Math.max(...temperatures));
    }),
  );
});

it('leaves a gap where nothing was logged, and nothing where there is no value', () => {
  const at = Float64Array.of(0, 1, 98, 99, 100);
  const thin = thinReadings(at, Float64Array.of(1, 2, 3, 4, Number.NaN), 10);
  expect(thin.map(({ lowest, highest }) => [lowest, highest])).toEqual([
    [1, 2],
    [3, 4],
  ]);
  expect(thinReadings(new Float64Array(0), new Float64Array(0), 10)).toEqual([]);
});
