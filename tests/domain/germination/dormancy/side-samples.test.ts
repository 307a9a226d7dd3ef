import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { SideSample } from '../../../../lib/domain/germination/dormancy/side-sample';
import {
  aliveWithSideSamples,
  type TestWithSideSamples,
} from '../../../../lib/domain/germination/dormancy/side-samples';
import { binomialInterval } from '../../../../lib/domain/statistics/binomial-interval';
import { expectClose, goldenRows } from '../../../support/golden-table';

const SEED = { seed: 20261125 };
const NONE: SideSample = { seeds: 0, looked: 0, alive: 0 };

function found(input: TestWithSideSamples) {
  const result = aliveWithSideSamples(input);
  if (!result.ok) throw new Error(result.reason);
  return result;
}

interface Row {
  seeds: number;
  normal: number;
  hard: number;
  hardLooked: number;
  hardAlive: number;
  fresh: number;
  freshLooked: number;
  freshAlive: number;
  level: number;
  proportion: number;
  lower: number;
  upper: number;
}

test('agrees with R, which finds the most likely shares by expectation-maximisation', () => {
  for (const row of goldenRows<Row>('side-samples', 'rows')) {
    const result = found({
      seeds: row.seeds,
      normal: row.normal,
      hard: { seeds: row.hard, looked: row.hardLooked, alive: row.hardAlive },
      fresh: { seeds: row.fresh, looked: row.freshLooked, alive: row.freshAlive },
      level: row.level,
    });
    expectClose(result.proportion, row.proportion, 1e-14, row);
    expectClose(result.lower, row.lower, 1e-9, { end: 'lower', ...row });
    expectClose(result.upper, row.upper, 1e-9, { end: 'upper', ...row });
  }
});

const share = fc.double({ min: 0, max: 1, noNaN: true });
/** Tests of up to 200 seeds with hard and fresh seed, some of each looked at. */
const anyTest = fc
  .record({
    normal: fc.integer({ min: 0, max: 80 }),
    hard: fc.integer({ min: 1, max: 60 }),
    fresh: fc.integer({ min: 1, max: 30 }),
    dead: fc.integer({ min: 0, max: 30 }),
    part: fc.tuple(share, share),
    alive: fc.tuple(share, share),
  })
  .map(({ normal, hard, fresh, dead, part, alive }): TestWithSideSamples => {
    const side = (seeds: number, partLooked: number, living: number): SideSample => {
      const looked = 1 + Math.round((seeds - 1) * partLooked);
      return { seeds, looked, alive: Math.round(looked * living) };
    };
    return {
      seeds: normal + hard + fresh + dead,
      normal,
      hard: side(hard, part[0], alive[0]),
      fresh: side(fresh, part[1], alive[1]),
    };
  });

describe('laws', () => {
  test('with every hard and fresh seed looked at it is the Wilson interval of all alive seeds', () => {
    fc.assert(
      fc.property(anyTest, (input) => {
        const whole = (part: SideSample) => ({ ...part, looked: part.seeds });
        const result = found({ ...input, hard: whole(input.hard), fresh: whole(input.fresh) });
        const alive = input.normal + input.hard.alive + input.fresh.alive;
        const wilson = binomialInterval({ successes: alive, trials: input.seeds });
        expect(result.proportion).toBeCloseTo(alive / input.seeds, 12);
        expect(result.lower).toBeCloseTo(wilson.lower, 10);
        expect(result.upper).toBeCloseTo(wilson.upper, 10);
        expect(result.carriedOver).toBe(0);
      }),
      SEED,
    );
  });

  test('with neither hard nor fresh seed it is the Wilson interval of the normal seedlings', () => {
    for (const normal of [0, 1, 45, 50]) {
      const result = found({ seeds: 50, normal, hard: NONE, fresh: NONE });
      const wilson = binomialInterval({ successes: normal, trials: 50 });
      expect(result.lower).toBeCloseTo(wilson.lower, 12);
      expect(result.upper).toBeCloseTo(wilson.upper, 12);
    }
  });

  test('the interval holds the figure and stays within 0 and 1', () => {
    fc.assert(
      fc.property(anyTest, (input) => {
        const { lower, upper, proportion } = found(input);
        expect(lower).toBeLessThanOrEqual(proportion);
        expect(upper).toBeGreaterThanOrEqual(proportion);
        expect(lower).toBeGreaterThanOrEqual(0);
        expect(upper).toBeLessThanOrEqual(1);
      }),
      SEED,
    );
  });

  test('looking at twice as many, of which the same share is alive, narrows it', () => {
    const widths = [5, 10, 20, 40].map((looked) => {
      const hard = { seeds: 40, looked, alive: looked * 0.8 };
      const { lower, upper } = found({ seeds: 100, normal: 50, hard, fresh: NONE });
      return upper - lower;
    });
    expect(widths).toEqual([...widths].sort((a, b) => b - a));
    expect(new Set(widths).size).toBe(4);
  });

  test('hard and fresh seed count alike: exchanging them changes nothing', () => {
    fc.assert(
      fc.property(anyTest, (input) => {
        const one = found(input);
        const other = found({ ...input, hard: input.fresh, fresh: input.hard });
        expect(other.lower).toBeCloseTo(one.lower, 11);
        expect(other.upper).toBeCloseTo(one.upper, 11);
      }),
      { ...SEED, numRuns: 40 },
    );
  });

  test('a side sample of nothing but alive or nothing but dead still leaves doubt', () => {
    const at = (alive: number) => found({ seeds: 100, normal: 60, hard: { seeds: 30, looked: 5, alive }, fresh: NONE });
    const wilson = binomialInterval({ successes: 90, trials: 100 });
    expect(at(5).proportion).toBeCloseTo(0.9, 14);
    expect(at(5).lower).toBeLessThan(wilson.lower - 0.02);
    expect(at(0).proportion).toBeCloseTo(0.6, 14);
    expect(at(0).upper).toBeGreaterThan(binomialInterval({ successes: 60, trials: 100 }).upper + 0.01);
  });
});

test('every seed alive, or none, keeps that bound', () => {
  const hard = { seeds: 20, looked: 10, alive: 10 };
  expect(found({ seeds: 50, normal: 30, hard, fresh: NONE }).upper).toBe(1);
  expect(found({ seeds: 50, normal: 0, hard: { ...hard, alive: 0 }, fresh: NONE }).lower).toBe(0);
});

test('hard or fresh seed that nobody looked at: no figure, but its two extremes', () => {
  const looked = { seeds: 10, looked: 5, alive: 4 };
  const not = { seeds: 20, looked: 0, alive: 0 };
  expect(aliveWithSideSamples({ seeds: 100, normal: 60, hard: not, fresh: looked })).toEqual({
    ok: false,
    reason: 'hard-not-looked-at',
    between: [0.64, 0.89],
  });
  expect(aliveWithSideSamples({ seeds: 100, normal: 60, hard: NONE, fresh: not })).toMatchObject({
    ok: false,
    reason: 'fresh-not-looked-at',
    between: [0.6, 0.8],
  });
});

test('refuses counts that cannot be', () => {
  const good = { seeds: 100, normal: 60, hard: { seeds: 20, looked: 5, alive: 4 }, fresh: NONE };
  for (const bad of [
    { seeds: 0 },
    { normal: 101 },
    { hard: { seeds: 41, looked: 5, alive: 4 } },
    { hard: { seeds: 20, looked: 21, alive: 4 } },
    { hard: { seeds: 20, looked: 5, alive: 6 } },
    { fresh: { seeds: 21, looked: 1, alive: 1 } },
    { level: 95 },
  ]) {
    expect(() => aliveWithSideSamples({ ...good, ...bad }), JSON.stringify(bad)).toThrow(RangeError);
  }
});
