import { describe, expect, it } from 'vitest';
import { binomialTailCurve } from '../../../lib/domain/statistics/binomial-tail-curve';
import { goldenRows } from '../../support/golden-table';

interface Tail {
  successes: number;
  trials: number;
  probability: number;
  tail: number;
}

describe('the chance of at least so many, as a curve', () => {
  // Measured with the library's beta distribution: 3e-15 at 400 seeds, 8e-11 at five million.
  it.each([
    ['up to 20 000 seeds', (trials: number) => trials <= 20_000, 1e-12],
    ['at five million', (trials: number) => trials > 20_000, 1e-9],
  ])('agrees with R’s pbinom %s', (_where, applies, tolerance) => {
    const rows = goldenRows<Tail>('binomial-tail-curve', 'tails').filter(({ trials }) => applies(trials));
    expect(rows.length).toBeGreaterThan(10);
    for (const { successes, trials, probability, tail } of rows) {
      const error = Math.abs(binomialTailCurve(successes, trials)(probability) - tail);
      expect(error, `${successes} of ${trials} at ${probability}: off by ${error}`).toBeLessThan(tolerance);
    }
  });
});
