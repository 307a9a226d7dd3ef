/*
 * What a plan is likely to do to a lot of which something is believed already: the exact chances for each viability it may
 * have, weighed by how likely that viability is.
 */
import { operatingCharacteristic } from '../sample-size/operating-characteristic';
import type { SequentialPlan } from '../sample-size/sequential-plan';
import type { ErrorGoal } from '../sample-size/single-test-power';
import { BELIEF_STEPS, type Belief, viabilityOfStep } from './belief';
import { clearChances } from './clear-look';

export interface PlanOutcome {
  /** chance of a clear answer to keep */
  keep: number;
  /** chance of a clear answer to regrow */
  regrow: number;
  /** chance of a clear answer either way */
  clear: number;
  /** chance of keeping a lot at or below `poor`, or regrowing one at or above `good` */
  wrong: number;
  /** seeds used on average */
  expectedSeeds: number;
  /** seeds used at most, integer */
  mostSeeds: number;
}

interface AtStep {
  keep: number;
  regrow: number;
  seeds: number;
}

/** Beliefs so faint are passed over: together they move no chance by more than 1e-7. */
const FAINT = 1e-9;

/** What was worked out of a plan at each step of the ladder: lots on the same line share their plans. */
const worked = new WeakMap<SequentialPlan, (AtStep | undefined)[]>();

/**
 * The outcome of a plan for a lot.
 *
 * @param plan    one look or several. The same object asked again is answered from what was worked out before
 * @param belief  chances of each step of viability, adding to 1
 * @param goal    levels between which either answer will do
 * @returns chances in [0, 1] and seeds; absolute error below 1e-6
 * Checked against R: tests/golden/test-plan.json
 */
export function planOutcome(plan: SequentialPlan, belief: Belief, { poor, good }: ErrorGoal): PlanOutcome {
  let keep = 0;
  let regrow = 0;
  let wrong = 0;
  let expectedSeeds = 0;
  for (let step = 0; step < BELIEF_STEPS; step++) {
    const weight = belief[step] ?? 0;
    if (weight < FAINT) continue;
    const at = atStep(plan, step);
    keep += weight * at.keep;
    regrow += weight * at.regrow;
    expectedSeeds += weight * at.seeds;
    const viability = viabilityOfStep(step);
    if (viability <= poor) wrong += weight * at.keep;
    else if (viability >= good) wrong += weight * at.regrow;
  }
  return { keep, regrow, clear: keep + regrow, wrong, expectedSeeds, mostSeeds: plan.looks.at(-1)?.seedsTested ?? 0 };
}

function atStep(plan: SequentialPlan, step: number): AtStep {
  const known = worked.get(plan) ?? [];
  worked.set(plan, known);
  const found = known[step];
  if (found) return found;
  const [look, ...later] = plan.looks;
  const viability = viabilityOfStep(step);
  let at: AtStep;
  if (look && later.length === 0) at = { ...clearChances(look, viability), seeds: look.seedsTested };
  else {
    const { keep, regrow, expectedSeeds } = operatingCharacteristic(plan, viability);
    at = { keep, regrow, seeds: expectedSeeds };
  }
  known[step] = at;
  return at;
}
