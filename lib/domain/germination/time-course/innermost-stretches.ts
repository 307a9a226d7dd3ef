import type { CoveredStretches } from './covered-stretches';
import type { SeedInterval } from './dish-counts';

export interface Stretch {
  fromDay: number;
  /** Infinity for the stretch of seeds that never germinated, or not while they were watched */
  toDay: number;
}

/**
 * The stretches of days on which the likeliest curve can rise, and which of them each interval covers.
 *
 * A share placed where fewer intervals overlap can always be moved to where more do without loss, so only the places
 * of densest overlap can hold one: those that begin where some interval begins and end where one ends, with no other
 * end between. Intervals are open at fromDay and closed at toDay: one that ends on day 2 and one that begins there
 * share nothing.
 *
 * @param intervals  from seedIntervals
 * @returns stretches in order of days, not overlapping; and for each interval, in its order, what it covers
 * @see Turnbull (1976), J. R. Stat. Soc. B 38:290-295; Peto (1973), Appl. Stat. 22:86-91 (from memory)
 * Checked in tests/domain/germination/time-course/innermost-stretches.test.ts
 */
export function innermostStretches(intervals: readonly SeedInterval[]): {
  stretches: Stretch[];
  observations: CoveredStretches[];
} {
  const ends = intervals
    .flatMap(({ fromDay, toDay }) => [
      { day: fromDay, isStart: true },
      { day: toDay, isStart: false },
    ])
    // On the same day an end comes before a start, because the start is open.
    .sort((a, b) => (a.day === b.day ? Number(a.isStart) - Number(b.isStart) : a.day - b.day));
  const stretches: Stretch[] = [];
  for (const [i, end] of ends.entries()) {
    const next = ends[i + 1];
    if (end.isStart && next && !next.isStart) stretches.push({ fromDay: end.day, toDay: next.day });
  }
  const observations = intervals.map(({ fromDay, toDay, seeds }) => {
    const isCovered = (stretch: Stretch) => stretch.fromDay >= fromDay && stretch.toDay <= toDay;
    return { first: stretches.findIndex(isCovered), last: stretches.findLastIndex(isCovered), seeds };
  });
  return { stretches, observations };
}
