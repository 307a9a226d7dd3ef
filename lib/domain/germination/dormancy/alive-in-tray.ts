/*
 * How much of a lot is alive by a germination test and a closer look at what did not grow in it.
 */
import { type AliveWithSideSamples, aliveWithSideSamples } from './side-samples';

/** A germination test whose seed left over was stained or cut. All are counts, integers >= 0. */
export interface TrayLookedAt {
  /** seeds set, >= 1 */
  seeds: number;
  normal: number;
  abnormal: number;
  /** seeds classed hard or fresh at the final count */
  hardOrFresh: number;
  /** seeds left over that were stained or cut, and how many of these count as alive */
  looked: number;
  alive: number;
  /** probability in (0, 1), default 0.95 */
  level?: number;
}

/**
 * Alive share of the lot: what became normal seedlings, and of what was left hard or fresh the share shown alive.
 *
 * Nobody writes down which of the seeds looked at were hard and which fresh, so both count as one kind; it is the same when
 * all were looked at. Where more were looked at than were classed hard or fresh, the look itself decided their class (what
 * it found dead was counted as dead), and nothing is carried over.
 *
 * @param tray  see TrayLookedAt
 * @returns as `aliveWithSideSamples`: the share with its interval, or a refusal while nobody has looked
 * @throws RangeError when a count is not an integer in its range: more looked at than did not grow, more alive than looked at
 * @see docs/methods/hard-and-dormant-seed.md
 * Checked in tests/domain/germination/dormancy/alive-in-tray.test.ts
 */
export function aliveInTray({
  seeds,
  normal,
  abnormal,
  hardOrFresh,
  looked,
  alive,
  level = 0.95,
}: TrayLookedAt): AliveWithSideSamples {
  const left = Math.max(hardOrFresh, looked);
  if (!Number.isSafeInteger(abnormal) || abnormal < 0 || normal + abnormal + left > seeds) {
    throw new RangeError(
      `aliveInTray: normal, abnormal and what was left must be at most the ${seeds} seeds set, got ${normal} + ${abnormal} + ${left}`,
    );
  }
  return aliveWithSideSamples({
    seeds,
    normal,
    hard: { seeds: 0, looked: 0, alive: 0 },
    fresh: { seeds: left, looked, alive },
    level,
  });
}
