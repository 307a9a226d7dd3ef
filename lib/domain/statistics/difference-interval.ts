/*
 * How far apart two proportions from separate samples may be: Newcombe's hybrid score interval, made of the Wilson
 * intervals of the two. It stays inside -1 to 1 and keeps its sense at 0 and at all, where the textbook interval has no
 * width.
 */
import { binomialInterval } from './binomial-interval';

export interface DifferenceInterval {
  /** first share less second, -1 to 1 */
  difference: number;
  /** -1 to 1 */
  lower: number;
  /** -1 to 1 */
  upper: number;
  /** probability in (0, 1): 0.95, not 95 */
  level: number;
  method: 'newcombe';
}

interface Sample {
  /** count, integer, 0 <= successes <= trials */
  successes: number;
  /** count, integer, >= 1 */
  trials: number;
}

/**
 * Two-sided interval for the difference of two independent proportions.
 *
 * @param input.first   the share from which the other is taken
 * @param input.second  a separate sample: other seeds
 * @param input.level   probability in (0, 1), default 0.95
 * @returns the difference as found, and its bounds; absolute error below 1e-12
 * @throws RangeError when a count is not an integer in its range or the level outside (0, 1)
 * @see Newcombe (1998), Statistics in Medicine 17:873-890, method 10 (from memory)
 * Checked against R (`prop.test` for the two intervals): tests/golden/difference-interval.json
 */
export function differenceInterval({
  first,
  second,
  level = 0.95,
}: {
  first: Sample;
  second: Sample;
  level?: number;
}): DifferenceInterval {
  const one = binomialInterval({ ...first, level });
  const other = binomialInterval({ ...second, level });
  const [share, otherShare] = [first.successes / first.trials, second.successes / second.trials];
  const difference = share - otherShare;
  return {
    difference,
    lower: Math.max(-1, difference - Math.hypot(share - one.lower, other.upper - otherShare)),
    upper: Math.min(1, difference + Math.hypot(one.upper - share, otherShare - other.lower)),
    level,
    method: 'newcombe',
  };
}
