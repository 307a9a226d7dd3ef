import type { CalendarDate } from '../../calendar/calendar-date';
import type { ClassedReplicate } from '../seed-classes';
import { type DishState, unready } from './dish-state';

export interface TrayResult {
  /** in order of position */
  replicates: ClassedReplicate[];
  /** the last day on which something was counted */
  finishedOn: CalendarDate;
}

/**
 * The finished test that a tray's counts add up to.
 *
 * @param states  every dish of the tray, from dishStates, with nothing that `unready` names
 * @returns replicates whose classes add to their seeds
 * @throws RangeError when a dish is not ready, or the tray has no dish
 * Checked in tests/domain/germination/bench/tray-result.test.ts
 */
export function trayResult(states: readonly DishState[]): TrayResult {
  const [why] = unready(states);
  if (why) throw new RangeError(`trayResult: dish ${why.position} is not ready, got ${why.reason}`);
  const finishedOn = states
    .flatMap(({ days }) => days)
    .reduce<string | null>((last, { on }) => (last === null || on > last ? on : last), null);
  if (finishedOn === null) throw new RangeError('trayResult: states must hold at least one counted dish, got none');
  return { replicates: states.map(({ dish, totals }) => ({ seeds: dish.seeds, ...totals })), finishedOn };
}
