import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exactHomogeneity } from '../../../lib/domain/statistics/exact-homogeneity';
import { fisherExactPValue } from '../../../lib/domain/statistics/fisher-exact';
import { expectClose, goldenRows } from '../../support/golden-table';

const SEED = { seed: 20261125 };
const samplesOf = ({ trials, successes }: { trials: number[]; successes: number[] }) =>
  trials.map((size, i) => ({ trials: size, successes: successes[i] ?? Number.NaN }));

function pValueOf(samples: { successes: number; trials: number }[]): number {
  const found = exactHomogeneity(samples);
  if (!found.ok) throw new Error(found.reason);
  return found.pValue;
}

test('agrees with R for two to five samples, equal or not', () => {
  for (const row of goldenRows<{ trials: number[]; successes: number[]; pValue: number }>(
    'exact-homogeneity',
    'rows',
  )) {
    expectClose(pValueOf(samplesOf(row)), row.pValue, 1e-9, row);
  }
});

const sample = fc
  .integer({ min: 0, max: 40 })
  .chain((trials) => fc.record({ trials: fc.constant(trials), successes: fc.integer({ min: 0, max: trials }) }));

test('with two samples it is the two-sample exact test', () => {
  fc.assert(
    fc.property(sample, sample, (one, other) => {
      expectClose(pValueOf([one, other]), fisherExactPValue(one, other), 1e-10, [one, other]);
    }),
    SEED,
  );
});

test('neither the order of the samples nor counting failures instead changes it', () => {
  fc.assert(
    fc.property(fc.array(sample, { minLength: 1, maxLength: 4 }), (samples) => {
      const p = pValueOf(samples);
      expectClose(pValueOf([...samples].reverse()), p, 1e-9, samples);
      expectClose(pValueOf(samples.map((s) => ({ ...s, successes: s.trials - s.successes }))), p, 1e-9, samples);
    }),
    { ...SEED, numRuns: 50 },
  );
});

test('one sample, and all or none, differ in nothing', () => {
  expect(pValueOf([{ successes: 3, trials: 10 }])).toBe(1);
  expect(pValueOf([50, 50, 50].map((trials) => ({ successes: trials, trials })))).toBeCloseTo(1, 12);
});

test('says so where there are too many ways to go through', () => {
  const many = Array.from({ length: 6 }, () => ({ successes: 200, trials: 400 }));
  expect(exactHomogeneity(many)).toEqual({ ok: false, reason: 'too-many-ways' });
  // Good seed fails seldom, and few failures can be shared in few ways.
  expect(exactHomogeneity(many.map(({ trials }) => ({ successes: 397, trials }))).ok).toBe(true);
});

test('refuses what is no count', () => {
  expect(() => exactHomogeneity([])).toThrow(RangeError);
  expect(() => exactHomogeneity([{ successes: 2, trials: 1 }])).toThrow(RangeError);
});
