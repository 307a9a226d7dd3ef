/** Quantiles of a lot's probit viability, by false position on a curve made nearly straight. */
import { normalQuantile } from '../statistics/normal-distribution';
import { chanceBelowProbit, type PosteriorShape, roughProbit } from './chance-below-probit';

const WIDEST_PROBIT = 9; // a viability nearer to 0 or 1 than 1e-19 is not told apart from it
const PROBIT_TOLERANCE = 5e-6;
const CHANCE_TOLERANCE = 1e-5; // in probits of the chance
const MAX_SOLVER_STEPS = 60;

/**
 * The probit viability below which the lot is with a given chance: `chanceBelowProbit` the other way round.
 *
 * @param shape        the lot's posterior
 * @param probitsLost  published ageing D, probits, >= 0, finite
 * @param chance       in (0, 1)
 * @returns probits, held between -9 and 9
 * Checked against dense-grid integration: tests/domain/longevity/lot-model.test.ts
 */
export function probitQuantile(shape: PosteriorShape, probitsLost: number, chance: number): number {
  const { mean, sd } = roughProbit(shape, probitsLost, WIDEST_PROBIT);
  // In probits of the chance the curve is close to a straight line, so that false position needs few steps.
  const goal = normalQuantile(chance);
  let low = -WIDEST_PROBIT;
  let high = WIDEST_PROBIT;
  let lowError = Number.NaN; // not known yet
  let highError = Number.NaN;
  let lastSide = 0;
  let z = Math.max(low, Math.min(high, mean + goal * sd));
  for (let i = 0; i < MAX_SOLVER_STEPS; i += 1) {
    const below = chanceBelowProbit(shape, probitsLost, z);
    const error = normalQuantile(Math.min(1 - 1e-14, Math.max(1e-14, below))) - goal;
    if (Math.abs(error) < CHANCE_TOLERANCE) return z;
    if (error < 0) {
      if (z >= WIDEST_PROBIT) return z;
      low = z;
      lowError = error;
      if (lastSide < 0) highError *= 0.5;
      lastSide = -1;
    } else {
      if (z <= -WIDEST_PROBIT) return z;
      high = z;
      highError = error;
      if (lastSide > 0) lowError *= 0.5;
      lastSide = 1;
    }
    if (high - low < PROBIT_TOLERANCE) return 0.5 * (low + high);
    if (lowError < 0 && highError > 0) {
      // Every fourth step halves the bracket: a chance that is flat over a stretch would else hold one end for long.
      z = i % 4 === 3 ? 0.5 * (low + high) : low - (lowError * (high - low)) / (highError - lowError);
    } else {
      // One side only so far: step by what a normal curve of this spread would need, and a little beyond.
      z = Math.max(-WIDEST_PROBIT, Math.min(WIDEST_PROBIT, z - sd * error * (1.05 + i)));
    }
  }
  return z;
}
