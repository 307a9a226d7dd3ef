import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fisherExactPValue } from '../../../lib/domain/statistics/fisher-exact';
import { expectClose, goldenRows } from '../../support/golden-table';

const SEED = { seed: 20261125 };
const sample = fc
  .integer({ min: 0, max: 120 })
  .chain((trials) => fc.record({ trials: fc.constant(trials), successes: fc.integer({ min: 0, max: trials }) }));

test('agrees with R fisher.test, from 1 to 400 seeds', () => {
  for (const row of goldenRows<Record<'s1' | 'n1' | 's2' | 'n2' | 'pValue', number>>('fisher-exact', 'rows')) {
    const p = fisherExactPValue({ successes: row.s1, trials: row.n1 }, { successes: row.s2, trials: row.n2 });
    expectClose(p, row.pValue, 1e-9, row);
  }
});

test('the order of the samples and the choice of what counts as success do not matter', () => {
  const turned = ({ successes, trials }: { successes: number; trials: number }) => ({
    successes: trials - successes,
    trials,
  });
  fc.assert(
    fc.property(sample, sample, (first, second) => {
      const p = fisherExactPValue(first, second);
      expect(p).toBeGreaterThan(0);
      expect(p).toBeLessThanOrEqual(1);
      expectClose(fisherExactPValue(second, first), p, 1e-9, { first, second });
      expectClose(fisherExactPValue(turned(first), turned(second)), p, 1e-9, { first, second });
    }),
    SEED,
  );
});

test('an empty sample contradicts nothing', () => {
  expectClose(fisherExactPValue({ successes: 0, trials: 0 }, { successes: 3, trials: 7 }), 1, 1e-12, {});
});

test('refuses more successes than trials', () => {
  expect(() => fisherExactPValue({ successes: 2, trials: 1 }, { successes: 0, trials: 1 })).toThrow(RangeError);
  expect(() => fisherExactPValue({ successes: 0, trials: 1 }, { successes: 2, trials: 1 })).toThrow(RangeError);
});
