import { describe, expect, it } from 'vitest';
import { logRisingFactorialAboveFirst } from '../../../lib/domain/longevity/rising-factorial';

describe('logRisingFactorialAboveFirst', () => {
  it.each([1e-300, 1e-6, 0.3, 1, 7.9, 50, 1e4, 1e8])('is the plain sum of logarithms above a = %s', (a) => {
    const out = new Float64Array(2);
    for (const count of [1, 2, 10, 400]) {
      let log = 0;
      let slope = 0;
      for (let j = 1; j < count; j += 1) {
        log += Math.log(a + j);
        slope += 1 / (a + j);
      }
      logRisingFactorialAboveFirst(a, count, out);
      // At a = 1e8 two numbers of 2e9 are subtracted: 1e-6 is what doubles leave.
      expect(Math.abs((out[0] as number) - log)).toBeLessThan(1e-11 * (1 + Math.abs(log)) + 1e-14 * a);
      expect(Math.abs((out[1] as number) - slope)).toBeLessThan(1e-11 * (1 + slope));
    }
  });
});
