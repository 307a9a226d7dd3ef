import { describe, expect, it } from 'vitest';
import { fastLogCdf, fastLogCdfSlope } from '../../../lib/domain/longevity/fast-log-cdf';
import { normalLogCdf } from '../../../lib/domain/statistics/normal-distribution';

const along = (from: number, to: number, count: number) =>
  Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);

describe('fastLogCdf', () => {
  it('is within 1e-10 of the exact logarithm from -12 to 12, between knots too', () => {
    let worst = 0;
    for (const x of along(-12, 12, 60_013)) worst = Math.max(worst, Math.abs(fastLogCdf(x) - normalLogCdf(x)));
    expect(worst).toBeLessThan(1e-10);
  });

  it('is within 2e-12 of the exact logarithm, relatively, far below', () => {
    for (const x of along(-300, -12.001, 997)) {
      expect(Math.abs(fastLogCdf(x) / normalLogCdf(x) - 1), `x = ${x}`).toBeLessThan(2e-12);
    }
  });

  it('has a slope within 1e-7 of density over distribution function, and is finite however far', () => {
    for (const x of along(-30, 13, 9973)) {
      const exact = Math.exp(-0.5 * x * x - 0.5 * Math.log(2 * Math.PI) - normalLogCdf(x));
      expect(Math.abs(fastLogCdfSlope(x) - exact), `x = ${x}`).toBeLessThan(1e-7);
    }
    expect(Math.abs(fastLogCdf(-1e60) / -0.5e120 - 1)).toBeLessThan(1e-12);
    expect(fastLogCdf(1e60)).toBe(0);
    expect(fastLogCdfSlope(-1e60)).toBe(1e60);
  });
});
