/**
 * How much ageing a lot can still take: the published ageing at which the chance of being below a threshold reaches a
 * given figure. The chance only grows with ageing, so it is bracketed and closed in upon.
 */
import { type LotPosterior, probabilityBelow } from '../longevity/lot-model';

/** More ageing than this leaves no seed alive at any rate worth thinking of. */
const MOST_PROBITS = 1000;
/** Well under a day of ageing in any store. */
const CHANCE_TOLERANCE = 1e-4;
const RELATIVE_TOLERANCE = 1e-6;
const MOST_STEPS = 60;

/**
 * Published ageing D at which the chance of being below the threshold is this.
 *
 * @param posterior  of the lot, from fitLot
 * @param threshold  viability, proportion in (0, 1)
 * @param chance     in (0, 1)
 * @returns probits, >= 0; 0 when the chance is already as high in a new lot; Infinity when 1000 probits do not get there
 * @throws RangeError when an argument is outside its range
 * Checked in tests/domain/regrow/ageing-until-below.test.ts
 */
export function ageingUntilBelow({
  posterior,
  threshold,
  chance,
}: {
  posterior: LotPosterior;
  threshold: number;
  chance: number;
}): number {
  if (!(chance > 0 && chance < 1)) throw new RangeError(`ageingUntilBelow: chance must be in (0, 1), got ${chance}`);
  const errorAt = (probitsLost: number) => probabilityBelow(posterior, { probitsLost, threshold }) - chance;
  let lower = 0;
  let lowerError = errorAt(0);
  if (lowerError >= 0) return 0;
  let upper = 0.5;
  let upperError = errorAt(upper);
  while (upperError < 0) {
    if (upper >= MOST_PROBITS) return Number.POSITIVE_INFINITY;
    [lower, lowerError] = [upper, upperError];
    upper *= 3;
    upperError = errorAt(upper);
  }
  for (let step = 0; step < MOST_STEPS && upper - lower > RELATIVE_TOLERANCE * upper; step++) {
    // False position, with every third step a halving so that a flat stretch cannot hold one end for long.
    const straight = lower + ((upper - lower) * -lowerError) / (upperError - lowerError);
    const middle = step % 3 === 2 ? (lower + upper) / 2 : straight;
    const error = errorAt(middle);
    if (Math.abs(error) < CHANCE_TOLERANCE) return middle;
    if (error < 0) [lower, lowerError] = [middle, error];
    else [upper, upperError] = [middle, error];
  }
  return (lower + upper) / 2;
}
