/** How much more published ageing a lot can take before it is too likely to be below a threshold. */
import { normalQuantile } from '../statistics/normal-distribution';
import { type LotPosterior, probabilityBelow } from './lot-model';

const LOG_MOST_PROBITS = Math.log(1e6); // no store loses this many within centuries
const LOG_LEAST_PROBITS = Math.log(1e-9);
const RELATIVE_TOLERANCE = 1e-7;
const CHANCE_TOLERANCE = 1e-6; // in probits of the chance
const MAX_STEPS = 200;

/**
 * The ageing D at which the chance of being below the threshold reaches a level.
 *
 * @param posterior  from `fitLot`
 * @param threshold  a viability, proportion, 0 < threshold < 1
 * @param chance     chance in (0, 1): 0.1 for "no more than one in ten", 0.5 for the median
 * @returns published ageing in probits, counted from the lot's beginning; 0 when the chance is that high with no ageing at
 *          all; null when it is not reached within a million probits
 * @throws RangeError when threshold or chance is outside (0, 1)
 * Checked by undoing `probabilityBelow`: tests/domain/longevity/probits-until-below.test.ts
 */
export function probitsUntilBelow(
  posterior: LotPosterior,
  { threshold, chance }: { threshold: number; chance: number },
): number | null {
  if (!(chance > 0 && chance < 1)) throw new RangeError(`probitsUntilBelow: chance must be in (0, 1), got ${chance}`);
  const goal = normalQuantile(chance);
  // In probits of the chance against the logarithm of the ageing the curve is smooth, so false position is quick.
  const errorAt = (logProbits: number): number => {
    const below = probabilityBelow(posterior, { probitsLost: Math.exp(logProbits), threshold });
    return normalQuantile(Math.min(1 - 1e-14, Math.max(1e-14, below))) - goal;
  };
  if (probabilityBelow(posterior, { probitsLost: 0, threshold }) >= chance) return 0;
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  let lowError = 0;
  let highError = 0;
  let lastSide = 0;
  let here = 0; // one probit
  for (let i = 0; i < MAX_STEPS; i += 1) {
    const error = errorAt(here);
    if (Math.abs(error) < CHANCE_TOLERANCE) break;
    if (error < 0) {
      if (here >= LOG_MOST_PROBITS) return null;
      low = here;
      lowError = error;
      if (lastSide < 0) highError *= 0.5;
      lastSide = -1;
    } else {
      if (here <= LOG_LEAST_PROBITS) return 0;
      high = here;
      highError = error;
      if (lastSide > 0) lowError *= 0.5;
      lastSide = 1;
    }
    if (high - low < RELATIVE_TOLERANCE) break;
    if (high === Number.POSITIVE_INFINITY) here = Math.min(LOG_MOST_PROBITS, here + 1 + 0.5 * i);
    else if (low === Number.NEGATIVE_INFINITY) here = Math.max(LOG_LEAST_PROBITS, here - 1 - 0.5 * i);
    else here = i % 4 === 3 ? 0.5 * (low + high) : low - (lowError * (high - low)) / (highError - lowError);
  }
  return Math.exp(here);
}
