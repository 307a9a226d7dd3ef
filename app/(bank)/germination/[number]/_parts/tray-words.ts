import { formatDate } from '@/app/_format/figures';
import type { DishState, Unready } from '@/lib/domain/germination/bench/dish-state';
import type { PlannedCount } from '@/lib/domain/germination/bench/planned-counts';
import type { TrayPage } from '@/lib/server/queries/tray-page';

/**
 * Where a tray under way stands, for the top of its page; what stands between ** is bold. Whatever the seed that still
 * lies there does, the germination ends between the two figures.
 *
 * Checked in tests/app/tray-words.test.ts
 */
export function soFarInWords(states: readonly DishState[]): string {
  const seeds = sum(states, ({ dish }) => dish.seeds);
  const normal = sum(states, ({ totals }) => totals.normal);
  const left = sum(states, ({ remaining }) => Math.max(0, remaining));
  if (normal === 0 && left === seeds) return `**${seeds} seeds are set**, and nothing was counted yet.`;
  const soFar = `So far **${normal} of ${seeds} seeds** gave normal seedlings`;
  if (left === 0) return `**${normal} of ${seeds} seeds** gave normal seedlings, and every seed is classed.`;
  return `${soFar}; ${left} still ${left === 1 ? 'lies' : 'lie'} there. Whatever they do, it ends between ${percent(normal, seeds)} and ${percent(normal + left, seeds)} in 100.`;
}

/** One reason why a tray cannot be closed yet, and what to do about it. */
export function unreadyInWords(why: Unready): string {
  const dish = `Dish ${why.position}`;
  if (why.reason === 'disagreement') return `${dish}: two counts of ${formatDate(why.on)} disagree. Say which holds.`;
  if (why.reason === 'too-many') {
    return `${dish}: ${why.over} more ${why.over === 1 ? 'seed was' : 'seeds were'} counted than set. Correct a day.`;
  }
  return `${dish}: ${why.remaining} ${why.remaining === 1 ? 'seed is' : 'seeds are'} not classed yet.`;
}

/** What became of one planned count. */
export function plannedInWords({ state, on, madeOn, daysLate }: PlannedCount): string {
  if (state === 'made') {
    if (madeOn.length === 1 && madeOn[0] === on) return 'counted';
    return `counted on ${madeOn.map(formatDate).join(', ')}`;
  }
  if (state === 'passed-over') return 'passed over; a later count made up for it';
  if (state === 'late') return `${daysLate} ${daysLate === 1 ? 'day' : 'days'} late`;
  return state === 'today' ? 'due today' : 'to come';
}

/** Why there is no curve yet. */
export function noCurveInWords(reason: Extract<TrayPage['course'], { ok: false }>['reason']): string {
  if (reason === 'nothing-counted') return 'The curve begins with the first count.';
  if (reason === 'too-many') return 'In one dish more seed was counted than set: correct that first.';
  if (reason === 'found-too-early') return 'A seedling was written down on the day of setting: correct that day first.';
  return 'No curve could be worked out from these counts.';
}

/** Dishes that say nothing yet: 'Dishes 3 and 4 have not been looked at and are left out.' */
export function unseenInWords(positions: readonly number[]): string {
  const last = positions.at(-1);
  if (positions.length === 1) return `Dish ${last} has not been looked at and is left out.`;
  return `Dishes ${positions.slice(0, -1).join(', ')} and ${last} have not been looked at and are left out.`;
}

const sum = (states: readonly DishState[], of: (state: DishState) => number) =>
  states.reduce((total, state) => total + of(state), 0);

const percent = (count: number, seeds: number) => Math.round((100 * count) / seeds);
