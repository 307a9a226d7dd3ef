/*
 * What a sequential plan says about the seeds tested so far.
 */

import { requireCounts } from '../../statistics/require-counts';
import { goesOnFrom, requirePlan, type SequentialPlan, stopsOver } from './sequential-plan';

export type SequentialDecision =
  | { ok: true; decision: 'keep' | 'regrow' }
  /** set so many more seeds: the next group, or what is missing from the one begun */
  | { ok: true; decision: 'test-more'; seeds: number; groupBegun: boolean }
  /** the last look leaves the lot between its limits */
  | { ok: true; decision: 'undecided' }
  | {
      ok: false;
      /** more seeds were tested than the plan has looks for */
      reason: 'beyond-the-plan';
      mostSeeds: number;
    };

/**
 * Stop and keep, stop and regrow, or test so many more.
 *
 * Only the totals are asked, so an earlier look that had already decided is not noticed: decide at every look. Between
 * two looks nothing is decided, because the error rates hold only at the looks of the plan.
 *
 * @param plan    looks in order
 * @param so far  seedsTested: integer >= 0, all groups together; germinated: integer, 0 to seedsTested
 * @returns see SequentialDecision
 * @throws RangeError when the plan is out of order or a count outside its range
 * Checked in tests/domain/germination/sample-size/sequential-decision.test.ts
 */
export function sequentialDecision(
  plan: SequentialPlan,
  { seedsTested, germinated }: { seedsTested: number; germinated: number },
): SequentialDecision {
  requirePlan('sequentialDecision', plan);
  requireCounts('sequentialDecision', germinated, seedsTested);
  const index = plan.looks.findIndex((look) => look.seedsTested >= seedsTested);
  const look = plan.looks[index];
  if (!look) return { ok: false, reason: 'beyond-the-plan', mostSeeds: plan.looks.at(-1)?.seedsTested ?? 0 };
  if (look.seedsTested > seedsTested) {
    const groupBegun = seedsTested !== (plan.looks[index - 1]?.seedsTested ?? 0);
    return { ok: true, decision: 'test-more', seeds: look.seedsTested - seedsTested, groupBegun };
  }
  if (germinated >= stopsOver(look)) return { ok: true, decision: 'keep' };
  if (germinated < goesOnFrom(look)) return { ok: true, decision: 'regrow' };
  const next = plan.looks[index + 1];
  if (!next) return { ok: true, decision: 'undecided' };
  return { ok: true, decision: 'test-more', seeds: next.seedsTested - seedsTested, groupBegun: false };
}
