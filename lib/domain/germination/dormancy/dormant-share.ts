/*
 * How much of a lot is alive but does not grow: viability less germination, from separate samples of it.
 */
import { type DifferenceInterval, differenceInterval } from '../../statistics/difference-interval';

export interface DormantShare {
  /** alive less germinated, with its interval; negative when more germinated than was found alive */
  interval: DifferenceInterval;
  /**
   * 'shown': the whole interval is above 0; 'contradiction': it is below 0, so that one of the two tests must be wrong;
   * 'not-shown': the two may be alike
   */
  verdict: 'shown' | 'not-shown' | 'contradiction';
}

/**
 * Share of a lot that is dormant.
 *
 * @param input.viability    a sample shown alive (stained, cut, or grown after dormancy was broken): alive, integer, 0 to seeds;
 *                           seeds, integer, >= 1
 * @param input.germination  another sample, set to germinate as it was: germinated, integer, 0 to seeds; seeds, integer, >= 1
 * @param input.level        probability in (0, 1), default 0.95
 * @returns the difference with Newcombe's interval and a verdict
 * @throws RangeError when a count is not an integer in its range or the level outside (0, 1)
 * @see Newcombe (1998), Statistics in Medicine 17:873-890 (from memory); the verdicts are our own
 * Checked in tests/domain/germination/dormancy/dormant-share.test.ts; the interval against R
 */
export function dormantShare({
  viability,
  germination,
  level = 0.95,
}: {
  viability: { alive: number; seeds: number };
  germination: { germinated: number; seeds: number };
  level?: number;
}): DormantShare {
  const interval = differenceInterval({
    first: { successes: viability.alive, trials: viability.seeds },
    second: { successes: germination.germinated, trials: germination.seeds },
    level,
  });
  if (interval.lower > 0) return { interval, verdict: 'shown' };
  return { interval, verdict: interval.upper < 0 ? 'contradiction' : 'not-shown' };
}
