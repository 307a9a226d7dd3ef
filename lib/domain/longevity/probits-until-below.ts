/** How much published ageing a lot can take before it is too likely to be below a threshold: the one solver of that question. */
import { normalQuantile } from '../statistics/normal-distribution';
import { requireProportion } from '../statistics/require-proportion';
import { chanceAndSlopes, chanceBelowProbit } from './chance-below-probit';
import { fastProbit } from './fast-probit';
import type { LotPosterior } from './lot-model';

const LOG_MOST_PROBITS = Math.log(1e6); // no store loses this many within centuries
const LOG_LEAST_PROBITS = Math.log(1e-9);
const RELATIVE_TOLERANCE = 1e-7;
/** In probits of the chance. So near, a last step leads to the mark to about a thousandth of itself, and is not looked at. */
const NEAR = 0.001;
/** Ageing grows or shrinks by at most this factor (its logarithm) in a step. */
const LONGEST_STEP = 2.5;
const MAX_STEPS = 100;
const LEAST_CHANCE = 1e-14;
const SQRT_TWO_PI = Math.sqrt(2 * Math.PI);

const answer = new Float64Array(3);

/**
 * The ageing D at which the chance of being below the threshold reaches a level.
 *
 * @param posterior  from `fitLot`
 * @param threshold  a viability, proportion, 0 < threshold < 1
 * @param chance     chance in (0, 1): 0.1 for "no more than one in ten", 0.5 for the median
 * @param start      a guess at the answer, probits, > 0: a good one saves time
 * @returns published ageing in probits, counted from the lot's beginning; 0 when the chance is that high with no ageing at
 *          all; null when it is not reached within a million probits
 * @throws RangeError when threshold or chance is outside (0, 1)
 * Checked by undoing `probabilityBelow`: tests/domain/longevity/probits-until-below.test.ts
 */
export function probitsUntilBelow(
  posterior: LotPosterior,
  { threshold, chance, start = 1 }: { threshold: number; chance: number; start?: number },
): number | null {
  requireProportion('probitsUntilBelow', 'chance', chance, true);
  requireProportion('probitsUntilBelow', 'threshold', threshold, true);
  const z = normalQuantile(threshold);
  const goal = normalQuantile(chance);
  let low = LOG_LEAST_PROBITS;
  let high = LOG_MOST_PROBITS;
  let takesAgeing = false; // whether the chance is known to be lower with less ageing
  // In probits of the chance against the logarithm of the ageing the curve is smooth and often nearly straight.
  let here = Math.min(high, Math.max(low, Math.log(start)));
  for (let i = 0; i < MAX_STEPS; i += 1) {
    const probitsLost = Math.exp(here);
    chanceAndSlopes(posterior, probitsLost, z, answer);
    const probit = fastProbit(Math.min(1 - LEAST_CHANCE, Math.max(LEAST_CHANCE, answer[0] as number)));
    const error = probit - goal;
    if (error < 0) {
      if (here >= LOG_MOST_PROBITS) return null;
      low = here;
      takesAgeing = true;
    } else {
      if (here <= LOG_LEAST_PROBITS) return 0;
      high = here;
    }
    if (high - low < RELATIVE_TOLERANCE) break;
    const slope = (answer[2] as number) * probitsLost * SQRT_TWO_PI * Math.exp(0.5 * probit * probit);
    const straight = slope > 0 ? -error / slope : -Math.sign(error) * LONGEST_STEP;
    const next = here + Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, straight));
    if (Math.abs(error) < NEAR && next > low && next < high) return Math.exp(next);
    if (!takesAgeing && i > 0) {
      // Twice too much: it may be so likely with no ageing at all.
      if (chanceBelowProbit(posterior, 0, z) >= chance) return 0;
      takesAgeing = true;
    }
    const isClosed = low > LOG_LEAST_PROBITS && high < LOG_MOST_PROBITS;
    if (isClosed && (i % 4 === 3 || next <= low || next >= high)) here = 0.5 * (low + high);
    else here = Math.max(low, Math.min(high, next));
  }
  return Math.exp(here);
}
