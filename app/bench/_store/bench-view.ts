import type { NextCount } from '@/lib/domain/germination/bench/count-days';
import type { DishState, Unready } from '@/lib/domain/germination/bench/dish-state';
import type { ClassCounts } from '@/lib/domain/germination/seed-classes';
import type { BenchCount, BenchTray, TappedPlaces } from '@/lib/schemas/bench-wire';
import type { OwnPhoto } from './own-entries';

/** A tray with everything this device knows of it, what still waits to be sent included. */
export interface TrayView {
  tray: BenchTray;
  dishes: DishState<BenchCount>[];
  /** the count it waits for */
  next: NextCount;
  /** every dish that holds seed was looked at today */
  countedToday: boolean;
  /** what stands between it and its result; looked at on the final count */
  unready: Unready[];
  /** entries of this tray that wait to be sent */
  waiting: number;
  /** photographs among them; each stands among the tray's notes too, under its id */
  photosWaiting: readonly OwnPhoto[];
}

/** An entry that the server could not take: it stays on the device until somebody has read why. */
export interface RefusedEntry {
  id: string;
  trayNumber: string;
  /** what was entered, so that it can be written down elsewhere: 'dish 2 on 2026-11-25: 5 normal, 1 dead' */
  what: string;
  message: string;
}

export interface BenchView {
  /** 'opening': reading this device's memory; 'empty': nothing was ever loaded here */
  phase: 'opening' | 'empty' | 'ready';
  today: string;
  personName: string | null;
  /** in the order in which they are walked along: by place, then number; the same object until its tray changes */
  trays: readonly TrayView[];
  /** counts, notes and photographs that wait to be sent */
  waiting: number;
  link: 'online' | 'offline' | 'sign-in-needed' | 'no-answer';
  /** ISO instant of the last time the server's trays were read; null: never */
  readAt: string | null;
  refused: readonly RefusedEntry[];
  canUndo: boolean;
  /** null: everything that is entered is kept on this device */
  notKept: NotKept | null;
}

/** What this device cannot keep, so that it is lost if the page is closed before it is sent. */
export interface NotKept {
  /** 'photos': those that did not fit; counts and notes are kept */
  what: 'everything' | 'photos';
  /** the browser says that there is no room left; otherwise a private window, or it keeps nothing for other reasons */
  noRoom: boolean;
}

/** What the screen may do; openBench() in ./open-bench.ts gives it. Every method changes the view at once and writes to the device's memory behind it. */
export interface Bench {
  view(): BenchView;
  /** @returns how to stop listening */
  subscribe(listener: () => void): () => void;
  /** Writes down what was found in a dish on a day, in place of what this device saw there; null takes it back. */
  enter(entry: {
    trayId: string;
    dishId: string;
    on: string;
    found: ClassCounts | null;
    places?: TappedPlaces | null;
    /** it goes on with the entry before it, of the same dish and day, as a further digit does: one undo takes back both */
    goesOn?: boolean;
  }): void;
  /** Takes back the last entry or the last group of entries made on this device since it was opened. */
  undo(): void;
  /** Entries made inside belong together: one undo takes all of them back. */
  together(entries: () => void): void;
  addNote(note: { trayId: string; dish: number | null; on: string; text: string }): void;
  addPhoto(photo: { trayId: string; dish: number | null; on: string; picture: Blob }): Promise<void>;
  /** Forgets an entry that was refused. */
  letGo(id: string): void;
  /** Tries to send and to read now. */
  tryNow(): void;
}
