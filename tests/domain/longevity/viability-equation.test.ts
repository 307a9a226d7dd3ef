import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { moistureFactorDays, sigmaDays, temperatureFactor } from '../../../lib/domain/longevity/viability-equation';
import golden from '../../golden/viability-equation.json';

const constantsOf = new Map(golden.rows.map(({ crop, KE, CW, CH, CQ }) => [crop, { KE, CW, CH, CQ }]));
const barley = { KE: 9.983, CW: 5.896, CH: 0.04, CQ: 0.000428 };

describe('sigmaDays', () => {
  // DERIVED values: arithmetic in R from the constants, printed to six digits. Not published worked examples, and rows
  // at 5 % and -18 C lie outside most fitted ranges: they check the sum, not the seed.
  const rows = readFileSync(new URL('../../golden/viability-check-values.tsv', import.meta.url), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split('\t'));

  it('has all 114 derived rows to check', () => {
    expect(rows).toHaveLength(114);
  });

  it.each(rows)(
    'agrees with the derived value for %s at %s %% moisture and %s C',
    (crop, moisture, temperature, log10Sigma, sigma) => {
      const constants = constantsOf.get(crop as string);
      if (!constants) throw new Error(`no constants for ${crop}`);
      const days = sigmaDays(constants, { moisturePercent: Number(moisture), temperatureC: Number(temperature) });
      expect(Math.abs(days / Number(sigma) - 1)).toBeLessThan(5.1e-6);
      expect(Math.abs(Math.log10(days) - Number(log10Sigma))).toBeLessThan(5.1e-5);
    },
  );

  it('agrees with R to 1e-12', () => {
    for (const row of golden.rows) {
      const days = sigmaDays(row, row);
      expect(Math.abs(days / row.sigmaDays - 1), JSON.stringify(row)).toBeLessThan(1e-12);
    }
  });

  it('is a moisture part divided by a temperature part', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 20, noNaN: true }),
        fc.double({ min: -25, max: 60, noNaN: true }),
        (moisturePercent, temperatureC) => {
          const whole = sigmaDays(barley, { moisturePercent, temperatureC });
          const parts = moistureFactorDays(barley, moisturePercent) / temperatureFactor(barley, temperatureC);
          expect(Math.abs(parts / whole - 1)).toBeLessThan(1e-12);
        },
      ),
      { seed: 1, numRuns: 100 },
    );
  });

  it('gives drier and cooler seed a longer life within the fitted range', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5.5, max: 20, noNaN: true }),
        fc.double({ min: 3, max: 80, noNaN: true }),
        fc.double({ min: 0.01, max: 5, noNaN: true }),
        (moisturePercent, temperatureC, more) => {
          const days = sigmaDays(barley, { moisturePercent, temperatureC });
          expect(sigmaDays(barley, { moisturePercent: moisturePercent + more, temperatureC })).toBeLessThan(days);
          expect(sigmaDays(barley, { moisturePercent, temperatureC: temperatureC + more })).toBeLessThan(days);
        },
      ),
      { seed: 1, numRuns: 100 },
    );
  });

  it.each([0, -1, 100, Number.NaN])('refuses a moisture of %s percent', (moisturePercent) => {
    expect(() => sigmaDays(barley, { moisturePercent, temperatureC: 5 })).toThrow(RangeError);
  });

  it.each([-274, 151, Number.NaN])('refuses a temperature of %s C', (temperatureC) => {
    expect(() => sigmaDays(barley, { moisturePercent: 8, temperatureC })).toThrow(/temperatureC/);
  });

  it('refuses constants that are not numbers', () => {
    expect(() => sigmaDays({ ...barley, KE: Number.NaN }, { moisturePercent: 8, temperatureC: 5 })).toThrow(/KE/);
    expect(() => sigmaDays({ ...barley, CQ: Number.NaN }, { moisturePercent: 8, temperatureC: 5 })).toThrow(/CQ/);
  });
});
