import { dayCounts } from '@/lib/domain/germination/bench/day-counts';
import { sayTheSame } from '@/lib/domain/germination/bench/tray-count';
import type { ClassCounts } from '@/lib/domain/germination/seed-classes';
import type { TappedPlaces } from '@/lib/schemas/bench-wire';
import type { TrayView } from './bench-view';
import { type KnownHere, nextId } from './known-here';
import type { OwnCount } from './own-entries';

export interface Entered {
  trayId: string;
  dishId: string;
  on: string;
  found: ClassCounts | null;
  places: TappedPlaces | null;
}

/** What held for a dish and a day, and the ids of the counts that said so. */
export interface Standing {
  found: ClassCounts | null;
  places: TappedPlaces | null;
  ids: string[];
  disagree: boolean;
}

export function standingOf({ tray }: TrayView, dishId: string, on: string): Standing {
  const [day] = dayCounts(tray.counts.filter((count) => count.dishId === dishId && count.on === on));
  return {
    found: day?.found ?? null,
    places: day?.standing.at(-1)?.places ?? null,
    ids: day?.standing.map(({ id }) => id) ?? [],
    disagree: day?.disagree ?? false,
  };
}

/** Whether writing this down would change nothing: it stands there already, and nobody disagrees. */
export const standsAlready = ({ found, places, ids, disagree }: Standing, entered: Entered): boolean =>
  !disagree &&
  ids.length <= 1 &&
  (ids.length === 1 || entered.found === null) &&
  sayTheSame(found, entered.found) &&
  JSON.stringify(places) === JSON.stringify(entered.places);

/**
 * A count in place of others. Own ones that still wait are written over rather than sent one after the other.
 *
 * @param over  ids of the counts of this dish and day that it replaces
 */
export function newCount(
  known: KnownHere,
  { tray }: TrayView,
  entered: Entered,
  over: readonly string[],
  { now, byName }: { now: number; byName: string },
): { count: OwnCount; instead: string[] } {
  const position = tray.dishes.find(({ id }) => id === entered.dishId)?.position;
  if (position === undefined)
    throw new RangeError(`newCount: dishId must be of tray ${tray.number}, got ${entered.dishId}`);
  const amended = over.flatMap((id) => {
    const own = known.waiting.get(id);
    return own?.kind === 'count' ? [own] : [];
  });
  const waits = new Set(amended.map(({ id }) => id));
  const replaces = [...over.filter((id) => !waits.has(id)), ...amended.flatMap((own) => own.replaces)];
  const amends = [...waits, ...amended.flatMap((own) => own.amends)];
  const count: OwnCount = {
    kind: 'count',
    id: nextId(known, now),
    trayNumber: tray.number,
    ...entered,
    position,
    replaces: [...new Set(replaces)],
    amends: [...new Set(amends)],
    madeAt: new Date(now).toISOString(),
    byName,
  };
  return { count, instead: [...waits] };
}
