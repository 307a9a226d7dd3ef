import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { PUBLISHED_SEQUENTIAL_PLAN } from '../../../../lib/domain/germination/sample-size/published-sequential-plan';
import { sequentialDecision } from '../../../../lib/domain/germination/sample-size/sequential-decision';
import { anyPlan } from './any-plan';
import { goldenPlan } from './golden-plans';

const decide = (seedsTested: number, germinated: number) =>
  sequentialDecision(PUBLISHED_SEQUENTIAL_PLAN, { seedsTested, germinated });

describe('decides at the printed limits', () => {
  test.each([
    [40, 29, 'regrow'],
    [40, 30, 'test-more'],
    [40, 40, 'test-more'],
    [80, 64, 'regrow'],
    [80, 65, 'test-more'],
    [80, 75, 'test-more'],
    [80, 76, 'keep'],
    [400, 340, 'regrow'],
    [400, 341, 'keep'],
  ])('%i tested, %i germinated: %s', (seedsTested, germinated, decision) => {
    expect(decide(seedsTested, germinated)).toMatchObject({ ok: true, decision });
  });
});

test('says how many more: a whole group, or what is missing from the one begun', () => {
  expect(decide(0, 0)).toEqual({ ok: true, decision: 'test-more', seeds: 40, groupBegun: false });
  expect(decide(40, 35)).toEqual({ ok: true, decision: 'test-more', seeds: 40, groupBegun: false });
  expect(decide(50, 2)).toEqual({ ok: true, decision: 'test-more', seeds: 30, groupBegun: true });
  expect(decide(15, 0)).toEqual({ ok: true, decision: 'test-more', seeds: 25, groupBegun: true });
});

test('more seeds than the plan has are beyond it, and an open end is left undecided', () => {
  expect(decide(401, 400)).toEqual({ ok: false, reason: 'beyond-the-plan', mostSeeds: 400 });
  const open = goldenPlan('openEnd');
  expect(sequentialDecision(open, { seedsTested: 20, germinated: 14 })).toMatchObject({ decision: 'regrow' });
  expect(sequentialDecision(open, { seedsTested: 20, germinated: 15 })).toMatchObject({ decision: 'undecided' });
  expect(sequentialDecision(open, { seedsTested: 20, germinated: 19 })).toMatchObject({ decision: 'keep' });
});

test('one more germinated never turns keep into going on, nor going on into regrow', () => {
  const rank = { regrow: 0, 'test-more': 1, undecided: 1, keep: 2 };
  fc.assert(
    fc.property(anyPlan, fc.nat(), fc.nat(), (plan, which, count) => {
      const { seedsTested } = plan.looks[which % plan.looks.length] ?? { seedsTested: 1 };
      const germinated = count % seedsTested;
      const decided = sequentialDecision(plan, { seedsTested, germinated });
      const better = sequentialDecision(plan, { seedsTested, germinated: germinated + 1 });
      if (!decided.ok || !better.ok) throw new Error('a look of the plan is never beyond it');
      expect(rank[better.decision]).toBeGreaterThanOrEqual(rank[decided.decision]);
    }),
    { seed: 20261125 },
  );
});

test('refuses what is no count', () => {
  for (const [seedsTested, germinated] of [
    [40, 41],
    [40, -1],
    [40, 1.5],
    [-1, 0],
  ] as const) {
    expect(() => decide(seedsTested, germinated)).toThrow(RangeError);
  }
});
