/** Quantiles of a lot's probit viability, by Newton's method on a curve made nearly straight. */
import { normalQuantile } from '../statistics/normal-distribution';
import { chanceAndSlopes, type PosteriorShape, roughProbit } from './chance-below-probit';
import { fastProbit } from './fast-probit';

const WIDEST_PROBIT = 9; // a viability nearer to 0 or 1 than 1e-19 is not told apart from it
const PROBIT_TOLERANCE = 5e-6;
/** In probits of the chance. So near, a last step leads to the mark to about a thousandth of itself, and is not looked at. */
const NEAR = 0.006;
/** How much flatter than a normal curve of the rough spread the curve is taken to be at most. */
const FLATTEST = 0.05;
const MAX_SOLVER_STEPS = 60;
const LEAST_CHANCE = 1e-14;
const SQRT_TWO_PI = Math.sqrt(2 * Math.PI);

const answer = new Float64Array(3);

/**
 * The probit viability below which the lot is with a given chance: `chanceBelowProbit` the other way round.
 *
 * @param shape        the lot's posterior
 * @param probitsLost  published ageing D, probits, >= 0, finite
 * @param chance       in (0, 1)
 * @param start        a guess, probits; left out, one is made
 * @returns probits, held between -9 and 9
 * Checked against dense-grid integration: tests/domain/longevity/lot-model.test.ts
 */
export function probitQuantile(shape: PosteriorShape, probitsLost: number, chance: number, start?: number): number {
  // In probits of the chance the curve is close to a straight line, exactly so for a normal one.
  const goal = chance === 0.5 ? 0 : normalQuantile(chance);
  let low = -WIDEST_PROBIT;
  let high = WIDEST_PROBIT;
  const { mean, sd } = roughProbit(shape, probitsLost, WIDEST_PROBIT);
  let z = Math.max(low, Math.min(high, start ?? mean + goal * sd));
  for (let i = 0; i < MAX_SOLVER_STEPS; i += 1) {
    chanceAndSlopes(shape, probitsLost, z, answer);
    const probit = fastProbit(Math.min(1 - LEAST_CHANCE, Math.max(LEAST_CHANCE, answer[0] as number)));
    const error = probit - goal;
    if (error < 0 ? z >= WIDEST_PROBIT : z <= -WIDEST_PROBIT) return z;
    if (error < 0) low = z;
    else high = z;
    if (high - low < PROBIT_TOLERANCE) return 0.5 * (low + high);
    const slope = Math.max((answer[1] as number) * SQRT_TWO_PI * Math.exp(0.5 * probit * probit), FLATTEST / sd);
    const straight = Math.max(-WIDEST_PROBIT, Math.min(WIDEST_PROBIT, z - error / slope));
    const isInside = straight >= low && straight <= high;
    if (Math.abs(error) < NEAR && isInside) return straight;
    // Every fourth step halves the bracket: a chance that is flat over a stretch would else hold the search for long.
    z = i % 4 === 3 || !isInside ? 0.5 * (low + high) : straight;
  }
  return z;
}
