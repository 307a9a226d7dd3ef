/*
 * A sequential test: set a group of seeds, look, and stop as soon as the count is clear. A clearly good or clearly poor
 * lot then costs one group instead of several.
 */
import { requireSeeds } from './require-seeds';

/** One look: after so many seeds, regrow at or below one count, keep at or above another, otherwise go on. */
export interface SequentialLook {
  /** seeds tested so far, all groups together, integer >= 1 */
  seedsTested: number;
  /** stop and regrow if at most this many germinated of all tested; null: never at this look */
  regrowAtMost: number | null;
  /** stop and keep if at least this many germinated of all tested; null: never at this look */
  keepAtLeast: number | null;
}

export interface SequentialPlan {
  looks: readonly SequentialLook[];
}

/**
 * Smallest count at which this look does not call for regrowing.
 *
 * @param look  counts of seeds
 * @returns integer >= 0
 * Checked through sequentialDecision: tests/domain/germination/sample-size/sequential-decision.test.ts
 */
export function goesOnFrom(look: SequentialLook): number {
  return (look.regrowAtMost ?? -1) + 1;
}

/**
 * Smallest count at which this look calls for keeping; one more than all seeds when none does.
 *
 * @param look  counts of seeds
 * @returns integer, at most seedsTested + 1
 * Checked through sequentialDecision: tests/domain/germination/sample-size/sequential-decision.test.ts
 */
export function stopsOver(look: SequentialLook): number {
  return look.keepAtLeast ?? look.seedsTested + 1;
}

/**
 * Refuses a plan whose looks are out of order or whose limits cross.
 *
 * @param functionName  the caller, named in the message
 * @param plan          looks in rising order of seeds
 * @throws RangeError naming the function and what is wrong
 * Checked in tests/domain/germination/sample-size/sequential-plan.test.ts
 */
export function requirePlan(functionName: string, { looks }: SequentialPlan): void {
  if (looks.length === 0) throw new RangeError(`${functionName}: looks must name at least one look, got none`);
  let before = 0;
  for (const look of looks) {
    requireSeeds(functionName, 'seedsTested', look.seedsTested, before + 1);
    before = look.seedsTested;
    if (look.regrowAtMost !== null) requireSeeds(functionName, 'regrowAtMost', look.regrowAtMost, 0);
    if (look.keepAtLeast !== null) requireSeeds(functionName, 'keepAtLeast', look.keepAtLeast, 0);
    if (goesOnFrom(look) > stopsOver(look)) {
      throw new RangeError(
        `${functionName}: keepAtLeast must be above regrowAtMost (${look.regrowAtMost}), got ${look.keepAtLeast}`,
      );
    }
  }
}
