import { describe, expect, test } from 'vitest';
import { BELIEF_STEPS } from '@/lib/domain/germination/plan/belief';
import { clearLook } from '@/lib/domain/germination/plan/clear-look';
import { groupPlan } from '@/lib/domain/germination/plan/group-plan';
import { planOutcome } from '@/lib/domain/germination/plan/plan-outcome';
import { proposeTest } from '@/lib/domain/germination/plan/propose-test';
import { testGoal } from '@/lib/domain/germination/plan/test-goal';
import { normalCdf, normalQuantile } from '@/lib/domain/statistics/normal-distribution';
import { goldenRows } from '../../../support/golden-table';

/** Probit viability is normal with this mean and spread. */
function believed(mean: number, sd: number): number[] {
  let below = 0;
  return Array.from({ length: BELIEF_STEPS }, (_, step) => {
    const chance = step === 99 ? 1 : normalCdf((normalQuantile((step + 1) / 100) - mean) / sd);
    const share = chance - below;
    below = chance;
    return share;
  });
}

interface Believed {
  line: number;
  mean: number;
  sd: number;
}

const close = (actual: number, expected: number, where: unknown) =>
  expect(Math.abs(actual - expected), `${JSON.stringify(where)}: got ${actual}`).toBeLessThan(1e-6);

describe('against R', () => {
  test('limits of single tests, and how often they are clear and wrong for what is believed', () => {
    type Row = Believed & { seeds: number; regrowAtMost: number | null; keepAtLeast: number | null } & Record<
        'keep' | 'regrow' | 'wrong',
        number
      >;
    for (const row of goldenRows<Row>('test-plan', 'single')) {
      const goal = testGoal(row.line);
      const look = clearLook(row.seeds, goal);
      expect(look, JSON.stringify(row)).toEqual({
        seedsTested: row.seeds,
        regrowAtMost: row.regrowAtMost,
        keepAtLeast: row.keepAtLeast,
      });
      const outcome = planOutcome({ looks: [look] }, believed(row.mean, row.sd), goal);
      for (const figure of ['keep', 'regrow', 'wrong'] as const) close(outcome[figure], row[figure], row);
      expect(outcome.expectedSeeds).toBeCloseTo(row.seeds, 5);
    }
  });

  test('the size chosen where no plan in groups fits: the smallest that is clear in 90 of 100 cases, by trying all', () => {
    for (const row of goldenRows<Believed & { seedsToSpare: number; seeds: number; enough: number }>(
      'test-plan',
      'chosen',
    )) {
      const belief = believed(row.mean, row.sd);
      const { chosen, enough } = proposeTest({ ...row, belief, everTested: true });
      expect([chosen?.seeds, enough], JSON.stringify(row)).toEqual([row.seeds, row.enough === 1]);
    }
  });

  test('plans in groups, path by path: how often they keep, regrow and err, and the seeds they use', () => {
    type Row = Believed & { seedsToSpare: number; regrowAtMost: number[]; keepAtLeast: number[] } & Record<
        'keep' | 'regrow' | 'wrong' | 'expectedSeeds',
        number
      >;
    for (const row of goldenRows<Row>('test-plan', 'groups')) {
      const plan = groupPlan(row.line, row.seedsToSpare);
      expect(plan?.looks.map((look) => look.regrowAtMost)).toEqual(row.regrowAtMost);
      expect(plan?.looks.map((look) => look.keepAtLeast)).toEqual(row.keepAtLeast);
      if (!plan) continue;
      const outcome = planOutcome(plan, believed(row.mean, row.sd), testGoal(row.line));
      for (const figure of ['keep', 'regrow', 'wrong'] as const) close(outcome[figure], row[figure], row);
      expect(outcome.expectedSeeds).toBeCloseTo(row.expectedSeeds, 3);
    }
  });
});

const LOT = { line: 0.8, seedsToSpare: 1000, everTested: true };

test('a lot far above its line, or far below it, needs a small test', () => {
  const above = proposeTest({ ...LOT, belief: believed(2.2, 0.15) });
  expect(above.standing).toBe('far-above');
  expect(above.enough).toBe(true);
  expect(above.chosen).toMatchObject({ kind: 'fixed', seeds: 40 });
  expect(proposeTest({ ...LOT, belief: believed(-0.5, 0.2) })).toMatchObject({
    standing: 'far-below',
    chosen: { kind: 'fixed', seeds: 40 },
  });
});

test('near the line groups are proposed, because they stop as soon as the count is clear', () => {
  const near = proposeTest({ ...LOT, belief: believed(normalQuantile(0.8), 0.05) });
  expect(near.standing).toBe('near-line');
  expect(near.chosen?.kind).toBe('groups');
  expect(near.enough).toBe(true);
  expect(proposeTest({ ...LOT, belief: believed(1.2, 0.6) })).toMatchObject({
    standing: 'uncertain',
    chosen: { kind: 'groups' },
  });
});

test('no test takes more than can be spared, and one that will not be clear says so', () => {
  for (const seedsToSpare of [20, 45, 79, 130, 399]) {
    const { options, chosen } = proposeTest({ ...LOT, seedsToSpare, belief: believed(0.9, 0.3) });
    expect(chosen).not.toBeNull();
    for (const { outcome } of options) expect(outcome?.mostSeeds).toBeLessThanOrEqual(seedsToSpare);
  }
  const little = proposeTest({ ...LOT, seedsToSpare: 45, belief: believed(0.9, 0.3) });
  expect(little.enough).toBe(false);
  expect(little.chosen?.outcome?.clear).toBeLessThan(0.9);
  expect(proposeTest({ ...LOT, seedsToSpare: 19, belief: believed(0.9, 0.3) }).chosen).toBeNull();
});

test('a first test is set whole and has a hundred seeds at least, where they can be spared', () => {
  const first = { ...LOT, everTested: false, belief: believed(2.2, 0.15) };
  expect(proposeTest(first).chosen).toMatchObject({ kind: 'fixed', seeds: 100 });
  expect(proposeTest({ ...first, belief: believed(1.2, 0.6) }).chosen?.kind).toBe('fixed');
  expect(proposeTest({ ...first, seedsToSpare: 70 }).chosen?.seeds).toBe(60);
});

test('without a forecast the usual hundred seeds are proposed, and nothing is said of how clear they will be', () => {
  const proposal = proposeTest({ ...LOT, belief: null, line: null });
  expect(proposal.chosen).toMatchObject({ kind: 'fixed', seeds: 100, outcome: null });
  expect(proposal).toMatchObject({ standing: null, enough: null });
  expect(proposeTest({ ...LOT, belief: null, line: null, seedsToSpare: 55 }).chosen?.seeds).toBe(50);
});

test('refuses seeds that are no number, and a belief of another ladder', () => {
  expect(() => proposeTest({ ...LOT, belief: null, seedsToSpare: -1 })).toThrow(RangeError);
  expect(() => proposeTest({ ...LOT, belief: [1] })).toThrow(RangeError);
});
