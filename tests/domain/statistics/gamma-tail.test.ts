import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gammaUpperTail } from '../../../lib/domain/statistics/gamma-tail';
import { expectClose, goldenRows } from '../../support/golden-table';

describe('upper tail of the gamma distribution', () => {
  it('equals R, small shapes by the library and large ones by series and fraction', () => {
    for (const row of goldenRows<{ shape: number; value: number; tail: number }>('gamma-tail', 'tails')) {
      expectClose(gammaUpperTail(row.value, row.shape), row.tail, row.shape <= 500 ? 1e-11 : 1e-9, row);
    }
  });

  it('has no seam where the method changes', () => {
    for (const z of [-3, 0, 2, 6]) {
      const at = (shape: number) => gammaUpperTail(shape + z * Math.sqrt(shape), shape);
      expectClose(at(500.000001), at(500), 1e-6, z);
    }
  });

  it('falls with the value and grows with the shape', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 3000, noNaN: true }),
        fc.double({ min: 0.01, max: 4000, noNaN: true }),
        (shape, value) => {
          const here = gammaUpperTail(value, shape);
          expect(gammaUpperTail(value * 1.001, shape)).toBeLessThanOrEqual(here + 1e-12);
          expect(gammaUpperTail(value, shape * 1.001)).toBeGreaterThanOrEqual(here - 1e-12);
        },
      ),
      { seed: 317, numRuns: 300 },
    );
  });

  it('is certain from 0 on and impossible beyond everything', () => {
    expect(gammaUpperTail(0, 700)).toBe(1);
    expect(gammaUpperTail(Number.POSITIVE_INFINITY, 700)).toBe(0);
  });

  it.each([
    [-1, 2],
    [Number.NaN, 2],
    [1, 0],
    [1, Number.POSITIVE_INFINITY],
  ])('refuses value %f and shape %f', (value, shape) => {
    expect(() => gammaUpperTail(value, shape)).toThrow(RangeError);
  });
});
