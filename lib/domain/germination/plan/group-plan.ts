/*
 * The plan in groups for a line and the seed that a lot can spare.
 */
import { deriveSequentialPlan } from '../sample-size/derive-sequential-plan';
import type { SequentialPlan } from '../sample-size/sequential-plan';
import { testGoal } from './test-goal';
import { GROUP_SEEDS } from './test-sizes';

/** Most seeds that a plan in groups may use; the largest that can be spared is taken. */
const MOST_SEEDS = [400, 320, 240, 200, 160, 120, 80] as const;

export interface GroupPlan extends SequentialPlan {
  /** line that it was made for, proportion */
  line: number;
  /** what it was allowed to use; its last look may need fewer */
  mostSeeds: number;
}

const made = new Map<string, GroupPlan | null>();

/**
 * The plan in groups of 40 that keeps the goal's limits of error with at most so many seeds: always the same for the same
 * line and seeds, so a screen and the command that follows it agree.
 *
 * @param line         viability at which the lot is regrown, proportion in (0, 1); see testGoal
 * @param seedsToSpare integer >= 0
 * @returns the plan, of two looks at least; null when so few seeds cannot keep the limits
 * @throws RangeError when the line is outside (0, 1)
 * Checked in tests/domain/germination/plan/group-plan.test.ts; its error rates against R through deriveSequentialPlan
 */
export function groupPlan(line: number, seedsToSpare: number): GroupPlan | null {
  const goal = testGoal(line);
  const mostSeeds = MOST_SEEDS.find((most) => most <= seedsToSpare);
  if (mostSeeds === undefined) return null;
  // A memo: at most one entry for each whole percent and each number above.
  const key = `${goal.line} ${mostSeeds}`;
  let plan = made.get(key);
  if (plan === undefined) {
    const derived = deriveSequentialPlan({ ...goal, groupSize: GROUP_SEEDS, maxSeeds: mostSeeds });
    plan =
      derived.ok && derived.plan.looks.length > 1 ? { looks: derived.plan.looks, line: goal.line, mostSeeds } : null;
    made.set(key, plan);
  }
  return plan;
}
