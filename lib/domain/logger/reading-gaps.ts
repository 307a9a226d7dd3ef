/** How often a logger wrote, and where it did not. */

export interface Gap {
  /** last instant before it and first after it, seconds since 1970 UTC */
  from: number;
  to: number;
}

export interface Gaps {
  /** seconds between readings, the median; null with fewer than two */
  usualIntervalSeconds: number | null;
  count: number;
  totalSeconds: number;
  /** the longest, in the order of time */
  longest: Gap[];
}

/** A step of more than so many usual ones is a gap: one missed reading (two steps) is nothing. */
export const STEPS_OF_A_GAP = 3;
const LONGEST_KEPT = 20;

/**
 * Finds the gaps between readings.
 *
 * @param atEpochSeconds  ascending, each once
 * @returns the median step, and the steps longer than STEPS_OF_A_GAP times that; totalSeconds adds up whole steps
 * Checked in tests/domain/logger/reading-gaps.test.ts
 */
export function readingGaps(atEpochSeconds: Float64Array): Gaps {
  const usual = medianStep(atEpochSeconds);
  const gaps: Gap[] = [];
  let totalSeconds = 0;
  if (usual !== null) {
    for (let index = 1; index < atEpochSeconds.length; index += 1) {
      const from = atEpochSeconds[index - 1] as number;
      const to = atEpochSeconds[index] as number;
      if (to - from <= STEPS_OF_A_GAP * usual) continue;
      gaps.push({ from, to });
      totalSeconds += to - from;
    }
  }
  const longest = gaps
    .toSorted((a, b) => b.to - b.from - (a.to - a.from))
    .slice(0, LONGEST_KEPT)
    .sort((a, b) => a.from - b.from);
  return { usualIntervalSeconds: usual, count: gaps.length, totalSeconds, longest };
}

/** Steps are few different numbers, so that counting them beats sorting them. */
function medianStep(at: Float64Array): number | null {
  if (at.length < 2) return null;
  const counts = new Map<number, number>();
  for (let index = 1; index < at.length; index += 1) {
    const step = (at[index] as number) - (at[index - 1] as number);
    counts.set(step, (counts.get(step) ?? 0) + 1);
  }
  const middle = (at.length - 1) / 2;
  let seen = 0;
  for (const [step, count] of [...counts].sort(([a], [b]) => a - b)) {
    seen += count;
    if (seen >= middle) return step;
  }
  return null;
}
