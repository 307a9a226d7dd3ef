import { isUuidV7, uuidV7 } from '@/lib/domain/ids/uuid-v7';
import type { BenchTray } from '@/lib/schemas/bench-wire';
import type { TrayView } from './bench-view';
import type { LastRead, Picked, Remembered } from './device-memory';
import type { OwnEntry, OwnPhoto, Refusal } from './own-entries';
import { inWalkingOrder, trayView } from './tray-view';

/**
 * What a tab knows, at hand: a copy of the device's memory that taps change at once, while the memory follows. Views of
 * trays are made when they are asked for and kept until something of that tray changes.
 */
export interface KnownHere {
  deviceId: string;
  lastRead: LastRead | null;
  trays: Map<string, BenchTray>;
  waiting: Map<string, OwnEntry>;
  picked: Map<string, OwnEntry>;
  done: Map<string, OwnEntry>;
  photos: Map<string, OwnPhoto>;
  refused: Map<string, Refusal>;
  /** ids of trays in walking order */
  order: string[];
  views: Map<string, TrayView>;
  /** the highest id seen on this device */
  highestId: string | null;
}

export function knownFrom(remembered: Remembered): KnownHere {
  const known: KnownHere = {
    deviceId: remembered.deviceId,
    lastRead: remembered.lastRead,
    trays: byId(remembered.trays),
    waiting: byId(remembered.waiting),
    picked: byId(remembered.picked),
    done: byId(remembered.done),
    photos: byId(remembered.photos),
    refused: new Map(remembered.refused.map((refusal) => [refusal.entry.id, refusal])),
    order: [...remembered.trays].sort(inWalkingOrder).map(({ id }) => id),
    views: new Map(),
    highestId: null,
  };
  for (const tray of remembered.trays) for (const { id } of tray.counts) seeId(known, id);
  for (const map of [known.waiting, known.picked, known.done, known.photos, known.refused]) {
    for (const id of map.keys()) seeId(known, id);
  }
  return known;
}

export const asRemembered = (known: KnownHere): Remembered => ({
  deviceId: known.deviceId,
  lastRead: known.lastRead,
  trays: [...known.trays.values()],
  waiting: [...known.waiting.values()],
  picked: [...known.picked.values()],
  done: [...known.done.values()],
  photos: [...known.photos.values()],
  refused: [...known.refused.values()],
});

const byId = <Item extends { id: string }>(items: readonly Item[]) => new Map(items.map((item) => [item.id, item]));

function seeId(known: KnownHere, id: string): void {
  if (isUuidV7(id) && (known.highestId === null || id > known.highestId)) known.highestId = id;
}

/** An id above every one seen on this device, whatever its clock says. */
export function nextId(known: KnownHere, now: number): string {
  known.highestId = uuidV7({ now, after: known.highestId, random: crypto.getRandomValues(new Uint8Array(8)) });
  return known.highestId;
}

/** Takes over what a fresh look at the memory has not changed: highest id, and views of trays that are as they were. */
export function keepViews(known: KnownHere, before: KnownHere): void {
  if (before.highestId !== null) seeId(known, before.highestId);
  // An entry never changes under its id, so ids tell whether a tray has the same ones.
  const ownIds = ({ waiting, picked, done, photos }: KnownHere, trayId: string) =>
    [waiting, picked, done, photos]
      .map((map) => [...map.values()].filter((entry) => entry.trayId === trayId).map(({ id }) => id))
      .join('|');
  for (const [id, view] of before.views) {
    const tray = known.trays.get(id);
    if (tray && sameTray(before.trays.get(id), tray) && ownIds(known, id) === ownIds(before, id))
      known.views.set(id, view);
  }
}

/** Forgets the view of a tray: it is made anew when it is asked for. */
export function trayChanged(known: KnownHere, trayId: string): void {
  known.views.delete(trayId);
}

export function viewsInOrder(known: KnownHere, today: string): TrayView[] {
  return known.order.flatMap((id) => viewOf(known, id, today) ?? []);
}

/** @returns undefined for a tray that is not open, or was never read here */
export function viewOf(known: KnownHere, trayId: string, today: string): TrayView | undefined {
  const kept = known.views.get(trayId);
  if (kept) return kept;
  const tray = known.trays.get(trayId);
  if (!tray) return undefined;
  const ofTray = <Item extends { trayId: string }>(map: Map<string, Item>) =>
    [...map.values()].filter((item) => item.trayId === trayId);
  const unsent = [...ofTray(known.picked), ...ofTray(known.waiting)];
  const photos = ofTray(known.photos);
  const view = trayView(
    tray,
    {
      deviceId: known.deviceId,
      entries: [...ofTray(known.done), ...unsent],
      photos,
      waiting: unsent.length + photos.length,
    },
    today,
  );
  known.views.set(trayId, view);
  return view;
}

/** An entry was made: it stands in place of unsent ones. */
export function addWaiting(known: KnownHere, entry: OwnEntry, instead: readonly string[]): void {
  for (const id of instead) known.waiting.delete(id);
  known.waiting.set(entry.id, entry);
  trayChanged(known, entry.trayId);
}

export function setPicked(known: KnownHere, { batch, dropped }: Picked): void {
  for (const id of dropped) {
    const entry = known.waiting.get(id);
    known.waiting.delete(id);
    if (entry) trayChanged(known, entry.trayId);
  }
  for (const entry of batch) {
    known.waiting.delete(entry.id);
    known.picked.set(entry.id, entry);
    trayChanged(known, entry.trayId);
  }
}

export function setSettled(known: KnownHere, done: readonly string[], refused: readonly Refusal[]): void {
  for (const id of done) {
    const entry = known.picked.get(id);
    if (entry) known.done.set(id, entry);
  }
  for (const refusal of refused) known.refused.set(refusal.entry.id, refusal);
  for (const id of [...done, ...refused.map(({ entry }) => entry.id)]) {
    const entry = known.picked.get(id);
    known.picked.delete(id);
    if (entry) trayChanged(known, entry.trayId);
  }
}

export function setPhotoSettled(known: KnownHere, photo: OwnPhoto, refused: Refusal | null): void {
  known.photos.delete(photo.id);
  if (refused) known.refused.set(photo.id, refused);
  trayChanged(known, photo.trayId);
}

export interface TraysRead {
  changed: BenchTray[];
  gone: string[];
}

/** Which of the trays that were just read differ from those known; the others keep their views. */
export function comparedToKnown(known: KnownHere, read: readonly BenchTray[]): TraysRead {
  const ids = new Set(read.map(({ id }) => id));
  return {
    changed: read.filter((tray) => !sameTray(known.trays.get(tray.id), tray)),
    gone: [...known.trays.keys()].filter((id) => !ids.has(id)),
  };
}

/** Counts and notes are only ever added, so their last ids and numbers tell; the rest is a few fields. */
function sameTray(one: BenchTray | undefined, other: BenchTray): boolean {
  if (!one) return false;
  const shape = ({ counts, notes, ...rest }: BenchTray) =>
    JSON.stringify([rest, counts.length, counts.at(-1)?.id, notes.length, notes.at(-1)?.id]);
  return shape(one) === shape(other);
}

export function setRead(
  known: KnownHere,
  lastRead: LastRead,
  { changed, gone }: TraysRead,
  seen: readonly string[],
): void {
  known.lastRead = lastRead;
  for (const id of gone) {
    known.trays.delete(id);
    trayChanged(known, id);
  }
  for (const tray of changed) {
    known.trays.set(tray.id, tray);
    for (const { id } of tray.counts) seeId(known, id);
    trayChanged(known, tray.id);
  }
  for (const id of seen) {
    const entry = known.done.get(id);
    known.done.delete(id);
    if (entry) trayChanged(known, entry.trayId);
  }
  if (changed.length > 0 || gone.length > 0) {
    known.order = [...known.trays.values()].sort(inWalkingOrder).map(({ id }) => id);
  }
}
