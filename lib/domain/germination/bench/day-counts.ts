/*
 * What holds for each dish and day, out of all that was written down. The rule, and why: docs/decisions/025.
 */
import type { ClassCounts } from '../seed-classes';
import { sayTheSame, type TrayCount } from './tray-count';

/** What holds for one dish on one day. */
export interface DayCount<Count extends TrayCount = TrayCount> {
  dishId: string;
  on: string;
  /** null: not counted, or taken back. Where counts disagree: what was written last, until somebody settles it */
  found: ClassCounts | null;
  /** counts that nothing replaces, oldest first; a new count of this dish and day replaces all of them */
  standing: Count[];
  /** two people or phones wrote different things without seeing each other's: somebody has to say which holds */
  disagree: boolean;
}

/**
 * What holds for every dish and day. Counts that were replaced no longer speak. Of those that stand, equal ones are one
 * finding written down twice; different ones disagree and are asked about.
 *
 * The result is the same for any order of the counts and for counts given twice.
 *
 * @param counts  of one tray or several, in any order
 * @returns one entry a dish and day, by dish id, then by day
 * Checked in tests/domain/germination/bench/day-counts.test.ts
 */
export function dayCounts<Count extends TrayCount>(counts: readonly Count[]): DayCount<Count>[] {
  const byId = new Map<string, Count>();
  for (const count of counts) if (!byId.has(count.id)) byId.set(count.id, count);
  const inOrder = [...byId.values()].sort((a, b) => compare(a.id, b.id));
  const replaced = replacedIn(inOrder, byId);
  const days = new Map<string, DayCount<Count>>();
  for (const count of inOrder) {
    if (replaced.has(count.id)) continue;
    const key = `${count.dishId} ${count.on}`;
    const day = days.get(key);
    if (!day) {
      days.set(key, { dishId: count.dishId, on: count.on, found: count.found, standing: [count], disagree: false });
      continue;
    }
    day.disagree ||= !sayTheSame(day.found, count.found);
    day.standing.push(count);
    day.found = count.found;
  }
  return [...days.values()].sort((a, b) => compare(a.dishId, b.dishId) || compare(a.on, b.on));
}

/**
 * A count only replaces one whose id is lower (made before it), so counts that name each other in a ring cannot all
 * vanish. Devices make ids above every id they have seen, whatever their clocks say.
 */
function replacedIn<Count extends TrayCount>(counts: readonly Count[], byId: ReadonlyMap<string, Count>): Set<string> {
  const replaced = new Set<string>();
  for (const count of counts) {
    for (const id of count.replaces) {
      const before = byId.get(id);
      if (before?.dishId === count.dishId && before.on === count.on && before.id < count.id) replaced.add(id);
    }
  }
  return replaced;
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
