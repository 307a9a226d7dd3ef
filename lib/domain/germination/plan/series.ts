/*
 * A test in groups as far as it has come. It is decided at every closed group, in order, so that a look that was clear
 * already stays the answer, whatever was set after it.
 */
import { type SequentialDecision, sequentialDecision } from '../sample-size/sequential-decision';
import type { SequentialPlan } from '../sample-size/sequential-plan';

export interface SeriesGroup {
  status: 'open' | 'closed' | 'given-up';
  /** seeds in the result and those of them alive; null until it is closed */
  result: { seeds: number; alive: number } | null;
}

export interface SeriesSoFar {
  /** of all groups that were closed */
  seedsTested: number;
  alive: number;
  decision: SequentialDecision;
  /** a group is being counted: nothing more is set before it is closed */
  waiting: boolean;
  /** how many seeds the next group takes; null: none is to be set */
  nextSeeds: number | null;
}

/**
 * What the plan says of the groups so far. Groups that were given up told nothing and do not count.
 *
 * @param plan    looks in order
 * @param groups  in the order in which they were set
 * @returns the decision of the first look that is clear, else that of the last
 * @throws RangeError when the plan is out of order or a count outside its range
 * Checked in tests/domain/germination/plan/series.test.ts
 */
export function seriesSoFar(plan: SequentialPlan, groups: readonly SeriesGroup[]): SeriesSoFar {
  let seedsTested = 0;
  let alive = 0;
  let decision = sequentialDecision(plan, { seedsTested, germinated: alive });
  let isDecided = false;
  for (const { result } of groups) {
    if (!result) continue;
    seedsTested += result.seeds;
    alive += result.alive;
    if (isDecided) continue;
    decision = sequentialDecision(plan, { seedsTested, germinated: alive });
    isDecided = decision.ok && decision.decision !== 'test-more';
  }
  const waiting = groups.some(({ status }) => status === 'open');
  const nextSeeds = !waiting && decision.ok && decision.decision === 'test-more' ? decision.seeds : null;
  return { seedsTested, alive, decision, waiting, nextSeeds };
}
