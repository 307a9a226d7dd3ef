import { MOST_ENTRIES_SENT } from '@/lib/schemas/bench-wire';
import type { BenchServer, Reached } from './bench-server';
import type { DeviceMemory, LastRead } from './device-memory';
import {
  comparedToKnown,
  type KnownHere,
  setPhotoSettled,
  setPicked,
  setRead,
  setSettled,
  type TraysRead,
} from './known-here';
import { asSentEntry, type OwnEntry, type Refusal } from './own-entries';

interface Parts {
  server: BenchServer;
  now(): number;
  /** as it is at this moment: another tab may have changed the memory meanwhile */
  known(): KnownHere;
  inMemory<Result>(work: (memory: DeviceMemory) => Promise<Result>): Promise<Result>;
  photoSettled(id: string): void;
  changed(): void;
  tellTabs(): void;
}

/**
 * Rounds of sending what waits and reading what is new. Each step is in the device's memory before the next one begins, so
 * a round may break off anywhere: whatever was sent and not answered is sent again as it was.
 */
export function makeRounds({ server, now, known, inMemory, photoSettled, changed, tellTabs }: Parts) {
  async function sendEntries(): Promise<Reached<unknown>> {
    for (;;) {
      const picked = await inMemory((its) => its.pick(MOST_ENTRIES_SENT));
      setPicked(known(), picked);
      changed();
      if (picked.dropped.length > 0) tellTabs();
      if (picked.batch.length === 0) return { ok: true, value: null };
      const entries = picked.batch.map(asSentEntry);
      const reached = await server.send({ deviceId: known().deviceId, entries });
      if (!reached.ok) return reached;
      const byId = new Map(picked.batch.map((entry) => [entry.id, entry]));
      const answered = reached.value.answers.filter(({ id }) => byId.has(id));
      const done = answered.filter(({ outcome }) => outcome !== 'refused').map(({ id }) => id);
      const refused = answered
        .filter(({ outcome }) => outcome === 'refused')
        .map(({ id, message }): Refusal => ({ entry: byId.get(id) as OwnEntry, message: message ?? '' }));
      await inMemory((its) => its.settle(done, refused));
      setSettled(known(), done, refused);
      changed();
      tellTabs();
      // A server that answers for none of them is not asked again at once.
      if (answered.length === 0) return { ok: false, why: 'no-answer' };
    }
  }

  async function sendPhotos(): Promise<Reached<unknown>> {
    for (const photo of [...known().photos.values()]) {
      const reached = await server.sendPhoto(photo, known().deviceId);
      if (!reached.ok) return reached;
      const { picture: _large, ...entry } = photo;
      const refusal = reached.value.outcome === 'refused' ? { entry, message: reached.value.message ?? '' } : null;
      await inMemory((its) => its.settlePhoto(photo.id, refusal));
      photoSettled(photo.id);
      setPhotoSettled(known(), photo, refusal);
      changed();
      tellTabs();
    }
    return { ok: true, value: null };
  }

  async function read(): Promise<Reached<unknown>> {
    const seen = [...known().done.keys()];
    const reached = await server.read(known().lastRead?.tag ?? null);
    if (!reached.ok) return reached;
    const readAt = new Date(now()).toISOString();
    if (reached.value === 'unchanged') {
      const lastRead = { ...(known().lastRead as LastRead), readAt };
      await keepRead(lastRead, { changed: [], gone: [] }, seen);
    } else {
      const { snapshot, tag } = reached.value;
      const { trays, ...about } = snapshot;
      await keepRead({ ...about, readAt, tag }, comparedToKnown(known(), trays), seen);
    }
    return reached;
  }

  async function keepRead(lastRead: LastRead, trays: TraysRead, seen: readonly string[]): Promise<void> {
    await inMemory((its) => its.keepRead(lastRead, trays.changed, trays.gone, seen));
    setRead(known(), lastRead, trays, seen);
    changed();
    tellTabs();
  }

  /**
   * @param reachable  the server answered last time. Where it did not, it is asked for news first: entries that were not
   *   picked for sending can still be written over
   */
  async function goRound(reachable: boolean): Promise<Reached<unknown>> {
    if (!reachable) {
      const reached = await read();
      if (!reached.ok) return reached;
    }
    const sends = known().waiting.size + known().picked.size + known().photos.size > 0;
    for (const work of [sendEntries, sendPhotos]) {
      const reached = await work();
      if (!reached.ok) return reached;
    }
    return reachable || sends ? read() : { ok: true, value: null };
  }

  return { goRound };
}
