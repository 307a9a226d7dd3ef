/*
 * What is believed of a lot's viability today, as shares of one over a ladder of viabilities a point apart. Plans of tests
 * are weighed on it: fine enough for them, and the same ladder for every lot, so that a plan is worked out once.
 */
import { chanceBelowProbit } from '../../longevity/chance-below-probit';
import type { LotPosterior } from '../../longevity/lot-model';
import { normalQuantile } from '../../statistics/normal-distribution';

/** Steps of the ladder; step i stands for viabilities from i to i + 1 percent. */
export const BELIEF_STEPS = 100;

/** Entry i: the chance that viability lies from i to i + 1 percent; adds to 1. */
export type Belief = readonly number[];

/** The viability that a step stands for, its middle: a proportion. */
export const viabilityOfStep = (step: number): number => (step + 0.5) / BELIEF_STEPS;

/**
 * The belief in a lot's viability after some published ageing.
 *
 * @param posterior    from `fitLot`
 * @param probitsLost  published ageing, probits, >= 0
 * @returns BELIEF_STEPS chances that add to 1
 * Checked in tests/domain/germination/plan/belief.test.ts: against `viabilityAt` and `probabilityBelow`
 */
export function beliefInViability(posterior: LotPosterior, probitsLost: number): number[] {
  let below = 0;
  return Array.from({ length: BELIEF_STEPS }, (_, step) => {
    const upTo = (step + 1) / BELIEF_STEPS;
    const chance =
      step === BELIEF_STEPS - 1 ? 1 : Math.max(below, chanceBelowProbit(posterior, probitsLost, normalQuantile(upTo)));
    const share = chance - below;
    below = chance;
    return share;
  });
}
