import type { ClassCounts } from '@/lib/domain/germination/seed-classes';
import type { BenchCount, BenchNote, SentEntry, TappedPlaces } from '@/lib/schemas/bench-wire';

/** What is the same of everything that is entered on this device. */
interface Own {
  id: string;
  trayId: string;
  trayNumber: string;
  on: string;
  madeAt: string;
  /** who was signed in when it was entered */
  byName: string;
}

export interface OwnCount extends Own {
  kind: 'count';
  dishId: string;
  /** of the dish, from 1 */
  position: number;
  found: ClassCounts | null;
  places: TappedPlaces | null;
  /** counts that the server has or will have before this one */
  replaces: string[];
  /** own counts that this one was written over before they were sent; one of them may have been sent all the same, by
   * another tab in the same moment (pick-to-send.ts) */
  amends: string[];
}

export interface OwnNote extends Own {
  kind: 'note';
  dish: number | null;
  text: string;
}

export interface OwnPhoto extends Own {
  kind: 'photo';
  dish: number | null;
  picture: Blob;
}

export type OwnEntry = OwnCount | OwnNote;

export interface Refusal {
  entry: OwnEntry | Omit<OwnPhoto, 'picture'>;
  message: string;
}

/** An own count beside those of the server. */
export function asBenchCount(count: OwnCount, deviceId: string): BenchCount {
  const { id, dishId, on, found, places, madeAt, byName } = count;
  return { id, dishId, on, found, places, madeAt, byName, deviceId, replaces: [...count.replaces, ...count.amends] };
}

/** An own note or photograph beside those of the server. */
export function asBenchNote(note: OwnNote | OwnPhoto): BenchNote {
  const { id, dish, on, kind, byName } = note;
  return { id, dish, on, kind, byName, text: note.kind === 'note' ? note.text : null };
}

export function asSentEntry(entry: OwnEntry): SentEntry {
  const { id, trayId, on, madeAt } = entry;
  if (entry.kind === 'note') return { kind: 'note', id, trayId, dish: entry.dish, on, text: entry.text, madeAt };
  const { dishId, found, places, replaces, byName } = entry;
  return { kind: 'count', id, trayId, dishId, on, found, places, replaces, madeAt, countedBy: byName };
}
