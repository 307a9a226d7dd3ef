import type { TrayView } from '../_store/bench-view';

export interface TraysToday {
  /** late, due today, or counted today already: in the order in which they stand */
  today: TrayView[];
  later: TrayView[];
}

/** Whether a tray belongs to today's round. What was counted today stays in it, or the list would jump. */
export const isForToday = ({ next, countedToday }: TrayView, today: string): boolean =>
  countedToday || next.on <= today;

/** Whether somebody still has to look at it today. */
export const isOpenToday = (view: TrayView, today: string): boolean => !view.countedToday && view.next.on <= today;

/**
 * Today's round and what comes later, both in the order in which the trays stand.
 *
 * @param trays  in the order in which they stand
 * Checked in tests/app/bench/tray-order.test.ts
 */
export function traysToday(trays: readonly TrayView[], today: string): TraysToday {
  const split: TraysToday = { today: [], later: [] };
  for (const view of trays) (isForToday(view, today) ? split.today : split.later).push(view);
  return split;
}

/**
 * The tray to go to from one that is done: the next in the round that is still to be looked at, from the beginning again
 * after the last.
 *
 * @returns its number; null when the round is done
 * Checked in tests/app/bench/tray-order.test.ts
 */
export function nextTrayNumber(trays: readonly TrayView[], from: string, today: string): string | null {
  const here = trays.findIndex(({ tray }) => tray.number === from);
  const round = [...trays.slice(here + 1), ...trays.slice(0, Math.max(0, here))];
  return round.find((view) => isOpenToday(view, today))?.tray.number ?? null;
}

/**
 * Trays whose number, variety, crop, lot or place holds what was typed; '204' finds T-0204.
 *
 * Checked in tests/app/bench/tray-order.test.ts
 */
export function traysLike(trays: readonly TrayView[], typed: string): TrayView[] {
  const wanted = typed.trim().toLowerCase();
  return trays.filter(({ tray }) =>
    [tray.number, tray.lotNumber, tray.accessionName, tray.cropName, tray.place ?? ''].some((text) =>
      text.toLowerCase().includes(wanted),
    ),
  );
}
