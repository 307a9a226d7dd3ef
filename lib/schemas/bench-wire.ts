/*
 * What the bench and the server say to each other. Types only: the bench's script carries no schema library.
 *
 * GET /api/bench          -> BenchSnapshot (every open tray)
 * POST /api/bench/entries -> SentEntries in, EntryAnswers out; each entry stands by itself, in the order sent
 * POST /api/bench/photos  -> the picture's bytes, the rest in the address (id, device, tray, dish, on, madeAt); answers an
 *                            EntryAnswer
 * GET /api/bench/photos/<id> -> the picture, WebP
 */
import type { BenchDish } from '../domain/germination/bench/dish-state';
import type { TrayCount } from '../domain/germination/bench/tray-count';
import type { SeedClass } from '../domain/germination/seed-classes';

/** Seed positions that were tapped, by class, from 0; for drawing only. */
export type TappedPlaces = Partial<Record<SeedClass, number[]>>;

export interface BenchCount extends TrayCount {
  places: TappedPlaces | null;
  deviceId: string;
  /** ISO 8601 instant, the device's clock */
  madeAt: string;
  /** who counted */
  byName: string;
}

export interface BenchNote {
  id: string;
  /** position of the dish; null: the whole tray */
  dish: number | null;
  on: string;
  kind: 'note' | 'photo';
  text: string | null;
  byName: string;
}

export interface BenchTray {
  id: string;
  number: string;
  lotNumber: string;
  accessionName: string;
  cropName: string;
  place: string | null;
  setOn: string;
  firstCountOn: string;
  finalCountOn: string;
  countEveryDays: number | null;
  temperatures: string | null;
  substrate: string | null;
  light: boolean;
  /** hard seed is to be expected in this crop */
  hardSeedOccurs: boolean;
  /** treated seed: gloves, not food */
  treatment: string | null;
  dishes: BenchDish[];
  counts: BenchCount[];
  notes: BenchNote[];
}

export interface BenchSnapshot {
  /** the bank's calendar day when this was read */
  today: string;
  /** today is fixed (tests, pictures): the device's own calendar does not count */
  todayIsFixed: boolean;
  person: { id: string; name: string };
  trays: BenchTray[];
}

/** A count or a note as a device sends it. */
export type SentEntry =
  | ({ kind: 'count'; trayId: string; countedBy: string | null } & Omit<BenchCount, 'byName' | 'deviceId'>)
  | {
      kind: 'note';
      id: string;
      trayId: string;
      dish: number | null;
      on: string;
      text: string;
      madeAt: string;
    };

export interface SentEntries {
  deviceId: string;
  entries: SentEntry[];
}

/** At most so many entries are sent at once. */
export const MOST_ENTRIES_SENT = 200;

export interface EntryAnswer {
  id: string;
  /** 'kept': written down now; 'known': it was here already; 'refused': it cannot be taken, and stays on the device */
  outcome: 'kept' | 'known' | 'refused';
  /** why it was refused, for whoever entered it */
  message?: string;
}

export interface EntryAnswers {
  answers: EntryAnswer[];
}
