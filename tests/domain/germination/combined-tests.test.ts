import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { combineTests, type TestToCombine } from '../../../lib/domain/germination/combined-tests';
import { binomialInterval } from '../../../lib/domain/statistics/binomial-interval';

function testOf(name: string, normals: number[], more: Partial<TestToCombine> & { size?: number } = {}): TestToCombine {
  const { size = 50, ...rest } = more;
  return {
    name,
    setOnDay: 0,
    probitsLost: null,
    replicates: normals.map((normal) => ({ seeds: size, normal })),
    ...rest,
  };
}

function combined(tests: TestToCombine[]) {
  const found = combineTests({ tests });
  if (!found.ok) throw new Error(found.reason);
  return found;
}

test('tests that agree are one test of all their seeds', () => {
  const found = combined([testOf('G1', [44, 45]), testOf('G2', [46, 43], { setOnDay: 30 })]);
  expect(found).toMatchObject({ taken: ['G2', 'G1'], leftOut: [], germinated: 178, seeds: 200, daysApart: 30 });
  expect(found.interval).toEqual(binomialInterval({ successes: 178, trials: 200 }));
  expect(found.unevenInterval).toBeNull();
  // R fisher.test(matrix(c(89, 11, 89, 11), 2)): the likeliest split of all.
  expect(found.homogeneity.exactPValue).toBeCloseTo(1, 9);
});

test('a test that differs by more than chance is left out, with how rare that is', () => {
  const found = combined([
    testOf('G1', [30, 31]),
    testOf('G2', [46, 43], { setOnDay: 10 }),
    testOf('G3', [44, 45], { setOnDay: 20 }),
  ]);
  expect(found.taken).toEqual(['G3', 'G2']);
  expect(found.leftOut).toMatchObject([{ name: 'G1', reason: 'differs' }]);
  // R fisher.test(matrix(c(89, 11, 89, 11, 61, 39), 2))$p.value
  expect(found.leftOut[0]?.pValue).toBeCloseTo(2.798296e-7, 12);
});

test('differing as chance makes them once in twenty times is the line', () => {
  // R fisher.test: 89 and 78 of 100 give p = 0.0556, 89 and 77 give 0.0373.
  const beside = (older: number[]) =>
    combineTests({ tests: [testOf('G1', older), testOf('G2', [44, 45], { setOnDay: 1 })] });
  expect(beside([39, 39]).ok).toBe(true);
  expect(beside([38, 39])).toMatchObject({ ok: false, leftOut: [{ name: 'G1', reason: 'differs' }] });
});

describe('the newest test that can be trusted leads', () => {
  test('a newest test whose replicates disagree is left out, and the one before it leads', () => {
    const found = combined([
      testOf('G1', [44, 45]),
      testOf('G2', [46, 43], { setOnDay: 30 }),
      testOf('G3', [48, 20], { setOnDay: 60 }),
    ]);
    expect(found.taken).toEqual(['G2', 'G1']);
    expect(found.leftOut).toEqual([{ name: 'G3', reason: 'replicates-disagree', pValue: null }]);
  });

  test('of two tests that differ neither is combined, and the older is named', () => {
    expect(combineTests({ tests: [testOf('G1', [30, 31]), testOf('G2', [46, 43], { setOnDay: 1 })] })).toMatchObject({
      ok: false,
      reason: 'none-to-combine',
      leftOut: [{ name: 'G1', reason: 'differs' }],
    });
  });

  test('of two set on one day, the one written down later is the newer', () => {
    expect(combined([testOf('G1', [44, 45]), testOf('G2', [44, 45])]).taken).toEqual(['G2', 'G1']);
  });
});

describe('ageing between the tests', () => {
  const pair = (days: number, older: number | null, newer: number | null) =>
    combineTests({
      tests: [
        testOf('G1', [44, 45], { probitsLost: older }),
        testOf('G2', [44, 45], { setOnDay: days, probitsLost: newer }),
      ],
    }).ok;

  test('up to a twentieth of a probit counts as none, for five years', () => {
    expect(pair(1826, 0.1, 0.15)).toBe(true);
    expect(pair(1827, 0.1, 0.15)).toBe(false);
    expect(pair(10, 0.1, 0.151)).toBe(false);
  });

  test('where it is not known, tests up to a year apart are of one time', () => {
    expect(pair(365, null, 0.4)).toBe(true);
    expect(pair(366, 0.4, null)).toBe(false);
  });

  test('a test left out for its age is named so', () => {
    const found = combineTests({ tests: [testOf('G1', [44, 45]), testOf('G2', [44, 45], { setOnDay: 400 })] });
    expect(found).toMatchObject({ ok: false, leftOut: [{ name: 'G1', reason: 'aged-between', pValue: null }] });
  });
});

test('tests within tolerance whose dishes together are uneven get the interval that allows for it', () => {
  const found = combined([
    testOf('G1', [86, 97, 90, 96], { size: 100 }),
    testOf('G2', [97, 87, 95, 90], { size: 100, setOnDay: 3 }),
  ]);
  expect(found.unevenInterval?.ok).toBe(true);
  if (found.unevenInterval?.ok) expect(found.unevenInterval.lower).toBeLessThan(found.interval.lower);
});

test('where the exact test has too many ways to go through, the chi-square decides', () => {
  const tests = Array.from({ length: 6 }, (_, i) => testOf(`G${i}`, [50, 51, 49, 50], { size: 100, setOnDay: i }));
  const found = combined(tests);
  expect(found.homogeneity.exactPValue).toBeNull();
  expect(found.taken).toHaveLength(6);
});

test('more agreeing tests never widen the interval', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 2, max: 5 }), (normal, count) => {
      const tests = Array.from({ length: count + 1 }, (_, i) => testOf(`G${i}`, [normal], { size: 100, setOnDay: i }));
      const width = (some: TestToCombine[]) => {
        const { lower, upper } = combined(some).interval;
        return upper - lower;
      };
      expect(width(tests)).toBeLessThanOrEqual(width(tests.slice(0, count)));
    }),
    { seed: 20261125, numRuns: 40 },
  );
});

test('one test, or none, is nothing to combine', () => {
  expect(combineTests({ tests: [] })).toEqual({ ok: false, reason: 'fewer-than-two-tests', leftOut: [] });
  expect(combineTests({ tests: [testOf('G1', [44])] })).toEqual({
    ok: false,
    reason: 'fewer-than-two-tests',
    leftOut: [],
  });
});
