import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type SeedsToTellInput, seedsToTell } from '../../../../lib/domain/germination/sample-size/seeds-to-tell';
import { singleTest, singleTestIn } from '../../../../lib/domain/germination/sample-size/single-test-power';
import { expectClose, goldenRows } from '../../../support/golden-table';

const SEED = { seed: 20261125 };

interface Row {
  poor: number;
  good: number;
  falseKeepLimit: number;
  falseRegrowLimit: number;
  smallest: number;
  smallestKeepAtLeast: number;
  steady: number;
  steadyKeepAtLeast: number;
  falseKeep: number;
  falseRegrow: number;
}

const goal = (row: Pick<Row, 'poor' | 'good' | 'falseKeepLimit' | 'falseRegrowLimit'>): SeedsToTellInput => ({
  poor: row.poor,
  good: row.good,
  falseKeep: row.falseKeepLimit,
  falseRegrow: row.falseRegrowLimit,
});

function found(input: SeedsToTellInput) {
  const answer = seedsToTell(input);
  if (!answer.ok) throw new Error(`${JSON.stringify(input)}: ${JSON.stringify(answer)}`);
  return answer;
}

test('agrees with R, which looks at every size from 1 to 6000: both numbers, their critical counts, their error rates', () => {
  for (const row of goldenRows<Row>('seeds-to-tell', 'rows')) {
    const { smallest, steady } = found(goal(row));
    const where = JSON.stringify(row);
    expect([smallest.seeds, smallest.keepAtLeast], where).toEqual([row.smallest, row.smallestKeepAtLeast]);
    expect([steady.seeds, steady.keepAtLeast], where).toEqual([row.steady, row.steadyKeepAtLeast]);
    expectClose(steady.falseKeep, row.falseKeep, 1e-10, row);
    expectClose(steady.falseRegrow, row.falseRegrow, 1e-10, row);
  }
});

interface UnevenRow {
  dishSize: number;
  correlation: number;
  poor: number;
  good: number;
  seedsAvailable: number;
  found: number;
  smallest: number;
  steady: number | null;
  keepAtLeast: number;
  falseKeep: number;
  falseRegrow: number;
}

test('uneven dishes agree with R over 1 to 40 dishes, or are not reachable in both', () => {
  for (const row of goldenRows<UnevenRow>('seeds-to-tell', 'uneven')) {
    const { dishSize, correlation, poor, good, seedsAvailable } = row;
    const dishes = { dishSize, correlation };
    const answer = seedsToTell({ poor, good, falseKeep: 0.05, falseRegrow: 0.1, dishes, seedsAvailable });
    expect(answer.ok, JSON.stringify(row)).toBe(row.found === 1);
    const test = answer.ok ? answer.steady : answer.best;
    if (answer.ok) expect([answer.smallest.seeds, answer.steady.seeds]).toEqual([row.smallest, row.steady]);
    expect(test.keepAtLeast, JSON.stringify(row)).toBe(row.keepAtLeast);
    expectClose(test.falseKeep, row.falseKeep, 1e-9, row);
    expectClose(test.falseRegrow, row.falseRegrow, 1e-9, row);
  }
});

test('the steady number holds for every larger test; one seed fewer does not', () => {
  for (const input of [
    { poor: 0.8, good: 0.9, falseKeep: 0.05, falseRegrow: 0.05 },
    { poor: 0.85, good: 0.95, falseKeep: 0.1, falseRegrow: 0.2 },
  ]) {
    const { steady, smallest, steadyUpTo } = found(input);
    expect(steadyUpTo).toBe(Number.POSITIVE_INFINITY);
    expect(smallest.seeds).toBeLessThan(steady.seeds);
    for (let seeds = steady.seeds; seeds < steady.seeds + 400; seeds++) {
      expect(singleTest(seeds, input).falseRegrow).toBeLessThanOrEqual(input.falseRegrow);
    }
    expect(singleTest(steady.seeds - 1, input).falseRegrow).toBeGreaterThan(input.falseRegrow);
  }
});

test('stricter limits and closer levels never need fewer seeds', () => {
  const limit = fc.constantFrom(0.01, 0.05, 0.1, 0.2);
  fc.assert(
    fc.property(
      fc.double({ min: 0.05, max: 0.85, noNaN: true }),
      fc.double({ min: 0.08, max: 0.14, noNaN: true }),
      limit,
      limit,
      (poor, gap, falseKeep, falseRegrow) => {
        const input = { poor, good: poor + gap, falseKeep, falseRegrow };
        const { steady, smallest } = found(input);
        for (const harder of [
          { ...input, falseKeep: falseKeep / 2 },
          { ...input, falseRegrow: falseRegrow / 2 },
          { ...input, good: poor + gap * 0.9 },
        ]) {
          expect(found(harder).smallest.seeds).toBeGreaterThanOrEqual(smallest.seeds);
          expect(found(harder).steady.seeds).toBeGreaterThanOrEqual(steady.seeds);
        }
      },
    ),
    { ...SEED, numRuns: 25 },
  );
});

test('with too few seeds it is not reachable, and what they do is said', () => {
  const input = { poor: 0.8, good: 0.9, falseKeep: 0.05, falseRegrow: 0.05 };
  const { steady } = found(input);
  expect(seedsToTell({ ...input, seedsAvailable: steady.seeds }).ok).toBe(true);
  // 136 seeds would do, but only just: with 146 it fails again.
  const short = seedsToTell({ ...input, seedsAvailable: steady.seeds - 1 });
  expect(short).toMatchObject({ ok: false, reason: 'not-enough-seeds', seedsAvailable: steady.seeds - 1 });
  if (!short.ok) expect(short.best).toEqual(singleTest(steady.seeds - 1, input));
  const one = seedsToTell({ ...input, seedsAvailable: 1 });
  expect(one).toMatchObject({ ok: false, best: { seeds: 1, keepAtLeast: 2, falseKeep: 0, falseRegrow: 1 } });
});

test('a lot of nothing is told from a lot of everything by one seed', () => {
  expect(found({ poor: 0, good: 1, falseKeep: 0.05, falseRegrow: 0.05 })).toMatchObject({
    steady: { seeds: 1, keepAtLeast: 1, falseKeep: 0, falseRegrow: 0 },
    smallest: { seeds: 1 },
  });
});

test('without correlation dishes change nothing', () => {
  const input = { poor: 0.8, good: 0.95, falseKeep: 0.05, falseRegrow: 0.05 };
  expect(seedsToTell({ ...input, dishes: { dishSize: 25, correlation: 0 } })).toEqual(seedsToTell(input));
  expect(singleTestIn(60, input, { dishSize: 20, correlation: 1e-9 }).falseKeep).toBeCloseTo(
    singleTest(60, input).falseKeep,
    6,
  );
});

test('refuses levels out of order, limits that are no chance, and dishes that are none', () => {
  const input = { poor: 0.8, good: 0.9, falseKeep: 0.05, falseRegrow: 0.05 };
  for (const bad of [
    { poor: 0.9 },
    { poor: -0.1 },
    { good: 1.1 },
    { falseKeep: 0 },
    { falseRegrow: 1 },
    { seedsAvailable: 0 },
    { dishes: { dishSize: 25, correlation: 1 } },
    { dishes: { dishSize: 2.5, correlation: 0.1 } },
  ]) {
    expect(() => seedsToTell({ ...input, ...bad }), JSON.stringify(bad)).toThrow(RangeError);
  }
});
