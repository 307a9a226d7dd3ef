import { nextCount } from '@/lib/domain/germination/bench/count-days';
import { dishStates, lastCountedOn, unready } from '@/lib/domain/germination/bench/dish-state';
import type { BenchTray } from '@/lib/schemas/bench-wire';
import type { TrayView } from './bench-view';
import { asBenchCount, asBenchNote, type OwnEntry, type OwnPhoto } from './own-entries';

export interface OwnOfTray {
  deviceId: string;
  /** in the order of their ids; done ones are not waiting */
  entries: readonly OwnEntry[];
  photos: readonly OwnPhoto[];
  waiting: number;
}

/** A tray as the server had it, with what this device has added since. */
export function trayView(tray: BenchTray, { deviceId, entries, photos, waiting }: OwnOfTray, today: string): TrayView {
  const counts = mergedById(
    tray.counts,
    entries.flatMap((entry) => (entry.kind === 'count' ? [asBenchCount(entry, deviceId)] : [])),
  );
  const notes = mergedById(
    tray.notes,
    [...entries.flatMap((entry) => (entry.kind === 'note' ? [entry] : [])), ...photos].map(asBenchNote),
  );
  const dishes = dishStates(tray.dishes, counts);
  const countedToday = dishes.every(
    ({ remaining, days }) => remaining <= 0 || days.some(({ on, found }) => on === today && found !== null),
  );
  return {
    tray: { ...tray, counts, notes },
    dishes,
    next: nextCount(tray, lastCountedOn(dishes), today),
    countedToday,
    unready: unready(dishes),
    waiting,
    photosWaiting: photos,
  };
}

/** The server's come first: what it has kept of this device is there with the name it was kept under. */
function mergedById<Item extends { id: string }>(ofServer: readonly Item[], own: readonly Item[]): Item[] {
  if (own.length === 0) return [...ofServer];
  const ids = new Set(ofServer.map(({ id }) => id));
  return [...ofServer, ...own.filter(({ id }) => !ids.has(id))];
}

const naturally = new Intl.Collator('en', { numeric: true });

/** In the order in which trays are walked along: by place, then by number; those without a place come last. */
export function inWalkingOrder(one: BenchTray, other: BenchTray): number {
  if (one.place === null || other.place === null) {
    if (one.place !== other.place) return one.place === null ? 1 : -1;
  } else {
    const byPlace = naturally.compare(one.place, other.place);
    if (byPlace !== 0) return byPlace;
  }
  return naturally.compare(one.number, other.number);
}
