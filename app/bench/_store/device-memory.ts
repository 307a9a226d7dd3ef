import type { BenchSnapshot, BenchTray } from '@/lib/schemas/bench-wire';
import type { OwnEntry, OwnPhoto, Refusal } from './own-entries';

/** What was last read from the server, without its trays. */
export interface LastRead extends Omit<BenchSnapshot, 'trays'> {
  /** ISO instant, this device's clock */
  readAt: string;
  /** by which the server knows whether anything has changed since; null: it did not say */
  tag: string | null;
}

/** Everything that this device knows. */
export interface Remembered {
  deviceId: string;
  lastRead: LastRead | null;
  trays: BenchTray[];
  /** entered, and not yet picked for sending */
  waiting: OwnEntry[];
  /** picked for sending: never changed again, and sent again and again until the server answers */
  picked: OwnEntry[];
  /** taken in by the server, and not yet seen among what is read from it */
  done: OwnEntry[];
  photos: OwnPhoto[];
  refused: Refusal[];
}

export interface Picked {
  /** to be sent now, in this order */
  batch: OwnEntry[];
  /** need not be sent at all: what they took back was never sent */
  dropped: string[];
}

/**
 * This device's memory, which outlives the page and is shared by its tabs. Each method is one transaction: it happens
 * whole or not at all, and after those that were begun before it, in whichever tab.
 */
export interface DeviceMemory {
  load(): Promise<Remembered>;
  /** Begins to write within the same tick, so that a page closed right after a tap has written. */
  write(entry: OwnEntry, instead: readonly string[]): Promise<void>;
  writePhoto(photo: OwnPhoto): Promise<void>;
  pick(most: number): Promise<Picked>;
  settle(done: readonly string[], refused: readonly Refusal[]): Promise<void>;
  settlePhoto(id: string, refused: Refusal | null): Promise<void>;
  /** @param seen  ids of done entries that were done before this was read */
  keepRead(
    lastRead: LastRead,
    changed: readonly BenchTray[],
    gone: readonly string[],
    seen: readonly string[],
  ): Promise<void>;
  letGo(id: string): Promise<void>;
  /**
   * Takes over what a page held while this memory took nothing.
   *
   * @param held   null: there is nothing to take, only to forget
   * @param stale  ids that wait no more under this name, unless they are among what is held
   */
  takeOver(held: Remembered | null, stale: readonly string[]): Promise<void>;
}
