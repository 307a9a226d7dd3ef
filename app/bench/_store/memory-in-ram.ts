import type { BenchTray } from '@/lib/schemas/bench-wire';
import type { DeviceMemory, Remembered } from './device-memory';
import { pickToSend } from './pick-to-send';

/**
 * A memory that lasts as long as the page: for a browser that cannot keep anything, and for tests, where it outlives the
 * bench that uses it. Everything is copied on its way in and out, as a real one does.
 */
export function memoryInRam(begin: Remembered): DeviceMemory {
  const trays = byId(begin.trays);
  const waiting = byId(begin.waiting);
  const picked = byId(begin.picked);
  const done = byId(begin.done);
  const photos = byId(begin.photos);
  const refused = new Map(begin.refused.map((refusal) => [refusal.entry.id, refusal]));
  let lastRead = begin.lastRead;

  const known = (id: string, tray: BenchTray | undefined) => tray?.counts.some((count) => count.id === id) ?? false;
  const copy = structuredClone<Remembered>;
  return {
    async load() {
      const { deviceId } = begin;
      const values = <Value>(map: Map<string, Value>) => [...map.values()];
      return copy({
        ...{ deviceId, lastRead, trays: values(trays), waiting: values(waiting), picked: values(picked) },
        ...{ done: values(done), photos: values(photos), refused: values(refused) },
      });
    },
    async write(entry, instead) {
      for (const id of instead) waiting.delete(id);
      waiting.set(entry.id, structuredClone(entry));
    },
    async writePhoto(photo) {
      photos.set(photo.id, photo);
    },
    async pick(most) {
      const choice = pickToSend(
        {
          waiting: [...waiting.values()],
          picked: [...picked.values()],
          isSent: (id, trayId) => picked.has(id) || done.has(id) || known(id, trays.get(trayId)),
          isRefused: (id) => refused.has(id),
        },
        most,
      );
      for (const id of choice.dropped) waiting.delete(id);
      for (const entry of choice.nowPicked) {
        waiting.delete(entry.id);
        picked.set(entry.id, entry);
      }
      return structuredClone({ batch: choice.batch, dropped: choice.dropped });
    },
    async settle(ids, refusals) {
      for (const id of ids) {
        const entry = picked.get(id);
        if (entry) done.set(id, entry);
        picked.delete(id);
      }
      for (const refusal of refusals) {
        picked.delete(refusal.entry.id);
        refused.set(refusal.entry.id, refusal);
      }
    },
    async settlePhoto(id, refusal) {
      photos.delete(id);
      if (refusal) refused.set(id, refusal);
    },
    async keepRead(read, changed, gone, seen) {
      lastRead = read;
      for (const id of gone) trays.delete(id);
      for (const tray of changed) trays.set(tray.id, tray);
      for (const id of seen) done.delete(id);
    },
    async letGo(id) {
      refused.delete(id);
    },
    async takeOver(held, stale) {
      const now = held === null ? null : copy(held);
      const ids = [...stale, ...(now ? [...now.waiting, ...now.picked, ...now.photos].map(({ id }) => id) : [])];
      for (const map of [waiting, picked, photos]) for (const id of ids) map.delete(id);
      if (!now) return;
      lastRead = now.lastRead;
      for (const tray of now.trays) trays.set(tray.id, tray);
      for (const entry of now.waiting) waiting.set(entry.id, entry);
      for (const entry of now.picked) picked.set(entry.id, entry);
      for (const entry of now.done) done.set(entry.id, entry);
      for (const photo of now.photos) photos.set(photo.id, photo);
      for (const refusal of now.refused) refused.set(refusal.entry.id, refusal);
    },
  };
}

const byId = <Item extends { id: string }>(items: readonly Item[]) => new Map(items.map((item) => [item.id, item]));
