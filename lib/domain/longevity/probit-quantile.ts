/** Quantiles of a lot's probit viability, by the secant method on a curve made nearly straight. */
import { normalQuantile } from '../statistics/normal-distribution';
import { chanceBelowProbit, type PosteriorShape, roughProbit } from './chance-below-probit';

const WIDEST_PROBIT = 9; // a viability nearer to 0 or 1 than 1e-19 is not told apart from it
const PROBIT_TOLERANCE = 5e-6;
const CHANCE_TOLERANCE = 1e-5; // in probits of the chance
/** From two points as close as these (in probits of the chance) a straight line hits the mark to about the tolerance. */
const STRAIGHT = { here: 0.005, before: 0.1 };
/** How much flatter than a normal curve of the rough spread the curve is taken to be at most. */
const FLATTEST = 0.05;
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
  // In probits of the chance the curve is close to a straight line, exactly so for a normal one.
  const goal = normalQuantile(chance);
  let low = -WIDEST_PROBIT;
  let high = WIDEST_PROBIT;
  let z = Math.max(low, Math.min(high, mean + goal * sd));
  let slope = 1 / sd;
  let before: { z: number; error: number } | null = null;
  for (let i = 0; i < MAX_SOLVER_STEPS; i += 1) {
    const below = chanceBelowProbit(shape, probitsLost, z);
    const error = normalQuantile(Math.min(1 - 1e-14, Math.max(1e-14, below))) - goal;
    if (Math.abs(error) < CHANCE_TOLERANCE) return z;
    if (error < 0 ? z >= WIDEST_PROBIT : z <= -WIDEST_PROBIT) return z;
    if (error < 0) low = z;
    else high = z;
    if (high - low < PROBIT_TOLERANCE) return 0.5 * (low + high);
    if (before) slope = Math.max((error - before.error) / (z - before.z), FLATTEST / sd);
    const straight = Math.max(-WIDEST_PROBIT, Math.min(WIDEST_PROBIT, z - error / slope));
    const isStraight = before && Math.abs(error) < STRAIGHT.here && Math.abs(before.error) < STRAIGHT.before;
    if (isStraight && straight >= low && straight <= high) return straight;
    before = { z, error };
    // Every fourth step halves the bracket: a chance that is flat over a stretch would else hold the search for long.
    z = i % 4 === 3 || straight < low || straight > high ? 0.5 * (low + high) : straight;
  }
  return z;
}
