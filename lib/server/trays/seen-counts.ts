import type { DayCount } from '@/lib/domain/germination/bench/day-counts';
import type { TrayCount } from '@/lib/domain/germination/bench/tray-count';

/** The counts that stand, as one text that a form carries: another text when anybody has written since. */
export function seenCounts(days: readonly DayCount<TrayCount>[]): string {
  return days
    .flatMap(({ standing }) => standing.map(({ id }) => id))
    .sort()
    .join(' ');
}
