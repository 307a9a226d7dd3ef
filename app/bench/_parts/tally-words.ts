import type { DishState, Unready } from '@/lib/domain/germination/bench/dish-state';
import { seedsFound } from '@/lib/domain/germination/bench/tray-count';
import { type ClassCounts, SEED_CLASSES } from '@/lib/domain/germination/seed-classes';

export interface Tally {
  seeds: number;
  /** taken out on all days, the one being counted included */
  out: number;
  /** found on the day being counted; null: not counted */
  onDay: number | null;
  /** still in the dish; negative when more was written down than set */
  left: number;
}

/**
 * The running figures of one dish, or of several together; out and left always add to the seeds set.
 *
 * @param states  at least one
 * @param on      the day being counted
 * Checked in tests/app/bench/tally-words.test.ts
 */
export function tallyOf(states: readonly DishState[], on: string): Tally {
  const tally: Tally = { seeds: 0, out: 0, onDay: null, left: 0 };
  for (const { dish, totals, remaining, days } of states) {
    tally.seeds += dish.seeds;
    tally.out += seedsFound(totals);
    tally.left += remaining;
    const found = days.find((day) => day.on === on)?.found;
    if (found) tally.onDay = (tally.onDay ?? 0) + seedsFound(found);
  }
  return tally;
}

/**
 * '35 of 50 out, 4 of them today, 15 left.'
 *
 * @param onWords  'today' or 'on 20 Nov'
 * Checked in tests/app/bench/tally-words.test.ts
 */
export function tallyInWords({ seeds, out, onDay, left }: Tally, onWords: string): string {
  const rest = left < 0 ? `${-left} too many` : `${left} left`;
  const day = onDay === null ? `not counted ${onWords}` : onDay === 0 ? `none ${onWords}` : `${onDay} ${onWords}`;
  return `${out} of ${seeds} out, ${day}, ${rest}.`;
}

/**
 * '7' for seed that came up normal alone, '7 (5 normal, 2 dead)' otherwise.
 *
 * Checked in tests/app/bench/tally-words.test.ts
 */
export function findingInWords(found: ClassCounts): string {
  const sum = seedsFound(found);
  if (sum === found.normal) return String(sum);
  const classes = SEED_CLASSES.filter((seedClass) => found[seedClass] > 0);
  return `${sum} (${classes.map((seedClass) => `${found[seedClass]} ${seedClass}`).join(', ')})`;
}

/**
 * What stands between a tray and its result, for whoever has it before them.
 *
 * @param onWords  how a day is said: 'today', 'on 20 Nov'
 * Checked in tests/app/bench/tally-words.test.ts
 */
export function unreadyInWords(unready: Unready, onWords: (on: string) => string): string {
  const dish = `Dish ${unready.position}`;
  switch (unready.reason) {
    case 'disagreement':
      return `${dish}: two counts ${onWords(unready.on)} disagree. Say which holds.`;
    case 'too-many':
      return `${dish}: ${unready.over} too many. Count again, or correct an earlier day.`;
    case 'not-classed':
      return `${dish}: ${unready.remaining} ${unready.remaining === 1 ? 'seed is' : 'seeds are'} not classed yet.`;
  }
}
