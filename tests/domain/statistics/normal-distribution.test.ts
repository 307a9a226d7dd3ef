import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  normalCdf,
  normalDensity,
  normalLogCdf,
  normalLogDensity,
  normalQuantile,
  normalUpperTail,
} from '../../../lib/domain/statistics/normal-distribution';
import { expectClose, goldenRows } from '../../support/golden-table';

const TOLERANCE = 1e-12;
const SEED = { seed: 20261125 };
/** Beyond 37.5 probits the smaller tail leaves the normal range of a double. */
const anyProbit = fc.double({ min: -37, max: 37, noNaN: true });

interface Row {
  x: number;
  lower: number;
  upper: number;
  logLower: number;
  density: number;
  logDensity: number;
}

describe('against R, both tails down to 1e-307', () => {
  test('probabilities, logarithms and densities', () => {
    for (const row of goldenRows<Row>('normal-distribution', 'values')) {
      expectClose(normalCdf(row.x), row.lower, TOLERANCE, { lower: row.x });
      expectClose(normalUpperTail(row.x), row.upper, TOLERANCE, { upper: row.x });
      expectClose(normalLogCdf(row.x), row.logLower, TOLERANCE, { logLower: row.x });
      expectClose(normalDensity(row.x), row.density, TOLERANCE, { density: row.x });
      expectClose(normalLogDensity(row.x), row.logDensity, TOLERANCE, { logDensity: row.x });
    }
  });

  test('logarithms stay right where the probability itself is 0 in a double', () => {
    for (const row of goldenRows<Row>('normal-distribution', 'far')) {
      expectClose(normalLogCdf(row.x), row.logLower, TOLERANCE, row);
      expectClose(normalLogDensity(row.x), row.logDensity, TOLERANCE, row);
    }
  });

  test('quantiles from 1e-300 to 1 - 1e-12', () => {
    for (const row of goldenRows<{ probability: number; x: number }>('normal-distribution', 'quantiles')) {
      expectClose(normalQuantile(row.probability), row.x, TOLERANCE, row);
    }
  });
});

test('the probits of common germination figures', () => {
  // Ordinary table values, five decimals.
  const table: [number, number][] = [
    [0.999, 3.09023],
    [0.995, 2.57583],
    [0.99, 2.32635],
    [0.98, 2.05375],
    [0.95, 1.64485],
    [0.9, 1.28155],
    [0.85, 1.03643],
    [0.8, 0.84162],
    [0.5, 0],
  ];
  for (const [proportion, probit] of table) expect(normalQuantile(proportion)).toBeCloseTo(probit, 5);
});

describe('laws', () => {
  test('the two tails mirror each other and add to 1', () => {
    fc.assert(
      fc.property(anyProbit, (x) => {
        expect(normalUpperTail(x)).toBe(normalCdf(-x));
        expect(Math.abs(normalCdf(x) + normalUpperTail(x) - 1)).toBeLessThanOrEqual(2e-16);
      }),
      SEED,
    );
  });

  test('the quantile takes a probability back to its probit, in the tails too', () => {
    fc.assert(
      fc.property(fc.double({ min: -37, max: 5, noNaN: true }), (x) => {
        // Above 5 a double cannot hold the probability finely enough to come back.
        expect(Math.abs(normalQuantile(normalCdf(x)) - x)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(x)));
      }),
      SEED,
    );
  });

  test('the logarithm is that of the probability', () => {
    fc.assert(
      fc.property(anyProbit, (x) => expectClose(Math.exp(normalLogCdf(x)), normalCdf(x), 1e-11, { x })),
      SEED,
    );
  });

  test('a higher probit is never a lower probability', () => {
    fc.assert(
      fc.property(anyProbit, anyProbit, (a, b) => {
        expect(normalCdf(Math.min(a, b))).toBeLessThanOrEqual(normalCdf(Math.max(a, b)));
      }),
      SEED,
    );
  });
});

describe('ends', () => {
  test('0 and 1 are infinitely many probits away', () => {
    expect(normalQuantile(0)).toBe(Number.NEGATIVE_INFINITY);
    expect(normalQuantile(1)).toBe(Number.POSITIVE_INFINITY);
    expect(normalCdf(Number.NEGATIVE_INFINITY)).toBe(0);
    expect(normalCdf(Number.POSITIVE_INFINITY)).toBe(1);
    expect(normalUpperTail(Number.POSITIVE_INFINITY)).toBe(0);
    expect(normalLogCdf(Number.NEGATIVE_INFINITY)).toBe(Number.NEGATIVE_INFINITY);
    expect(normalLogCdf(Number.POSITIVE_INFINITY)).toBe(0);
    expect(normalDensity(Number.POSITIVE_INFINITY)).toBe(0);
  });

  test('what is no probability or no number is refused by name', () => {
    expect(() => normalQuantile(-0.1)).toThrow(
      new RangeError('normalQuantile: probability must be in [0, 1], got -0.1'),
    );
    expect(() => normalQuantile(1.1)).toThrow(RangeError);
    expect(() => normalQuantile(Number.NaN)).toThrow(RangeError);
    for (const f of [normalCdf, normalUpperTail, normalLogCdf, normalDensity, normalLogDensity]) {
      expect(() => f(Number.NaN)).toThrow(RangeError);
    }
  });
});
