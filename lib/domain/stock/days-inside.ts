/** When a store stood inside another: a box counts to the fridge in which its shelf stands, for as long as it stood there. */
import { phasesBetween, type StorePhase } from './store-phases';

export interface DayStretch {
  /** days since 1970-01-01, or -Infinity */
  fromDay: number;
  /** not included; may be Infinity */
  toDay: number;
}

/**
 * @param storeId   the inner store
 * @param aroundId  the outer one, at any depth; a store is inside itself at all times
 * @param phasesOf  the phases of any store, as `storeTimeline` takes them
 * @returns stretches of days in order, neighbours put together; empty when it never was inside
 * @throws RangeError when a store on the way has no phases
 * Checked in tests/domain/stock/days-inside.test.ts
 */
export function daysInside(
  storeId: string,
  aroundId: string,
  phasesOf: (storeId: string) => readonly StorePhase[],
): DayStretch[] {
  const stretches: DayStretch[] = [];
  follow(storeId, -Infinity, Infinity, []);
  return stretches;

  function follow(id: string, fromDay: number, toDay: number, inner: readonly string[]): void {
    if (id === aroundId) add({ fromDay, toDay });
    if (id === aroundId || inner.includes(id)) return;
    for (const phase of phasesBetween(phasesOf(id), fromDay, toDay)) {
      if (phase.parentId !== null) follow(phase.parentId, phase.fromDay, phase.toDay, [...inner, id]);
    }
  }

  function add(stretch: DayStretch): void {
    const last = stretches.at(-1);
    if (last && last.toDay === stretch.fromDay) last.toDay = stretch.toDay;
    else stretches.push(stretch);
  }
}
