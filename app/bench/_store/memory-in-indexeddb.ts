import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from 'idb';
import type { BenchTray } from '@/lib/schemas/bench-wire';
import type { DeviceMemory, LastRead, Remembered } from './device-memory';
import type { OwnEntry, OwnPhoto, Refusal } from './own-entries';
import { pickToSend } from './pick-to-send';

interface Stores extends DBSchema {
  /** 'deviceId' and 'lastRead' */
  about: { key: string; value: string | LastRead };
  trays: { key: string; value: BenchTray };
  waiting: { key: string; value: OwnEntry };
  picked: { key: string; value: OwnEntry };
  done: { key: string; value: OwnEntry };
  photos: { key: string; value: Omit<OwnPhoto, 'picture'> & { bytes: ArrayBuffer; type: string } };
  refused: { key: string; value: Refusal };
}

type Name = StoreNames<Stores>;
type Writing = IDBPTransaction<Stores, Name[], 'readwrite'>;

const NAME = 'hilum-bench';
const ALL: Name[] = ['about', 'trays', 'waiting', 'picked', 'done', 'photos', 'refused'];
/** What was tapped is on the disk before it is called kept, also if the battery falls out. */
const ON_DISK = { durability: 'strict' } as const;

/**
 * Memory in the browser's IndexedDB. A phone that slept may have lost its connection to it: then it is opened anew and
 * the transaction tried once more.
 *
 * @param newDeviceId  taken when this device has none yet
 * @throws what the browser throws when it keeps nothing (private window, no room, switched off)
 */
export async function memoryInIndexedDb(newDeviceId: string): Promise<DeviceMemory> {
  let database = await open();

  async function again<Result>(work: () => Promise<Result>): Promise<Result> {
    try {
      return await work();
    } catch {
      database.close();
      database = await open();
      return work();
    }
  }

  const inTransaction = <Result>(names: Name[], work: (tx: Writing) => Promise<Result>): Promise<Result> =>
    again(async () => {
      const tx = database.transaction(names, 'readwrite', ON_DISK);
      const [result] = await Promise.all([work(tx), tx.done]);
      return result;
    });

  return {
    load: () =>
      again(async (): Promise<Remembered> => {
        const tx = database.transaction(ALL, 'readwrite');
        const store = <StoreName extends Name>(name: StoreName) => tx.objectStore(name);
        const [deviceId, lastRead, trays, waiting, picked, done, photos, refused] = await Promise.all([
          store('about').get('deviceId'),
          store('about').get('lastRead'),
          store('trays').getAll(),
          store('waiting').getAll(),
          store('picked').getAll(),
          store('done').getAll(),
          store('photos').getAll(),
          store('refused').getAll(),
        ]);
        if (deviceId === undefined) await store('about').put(newDeviceId, 'deviceId');
        await tx.done;
        return {
          deviceId: (deviceId as string | undefined) ?? newDeviceId,
          lastRead: (lastRead as LastRead | undefined) ?? null,
          ...{ trays, waiting, picked, done, refused },
          photos: photos.map(({ bytes, type, ...photo }) => ({ ...photo, picture: new Blob([bytes], { type }) })),
        };
      }),

    write: (entry, instead) =>
      inTransaction(['waiting'], async (tx) => {
        const waiting = tx.objectStore('waiting');
        const steps = [waiting.put(entry, entry.id), ...instead.map((id) => waiting.delete(id))];
        tx.commit();
        await Promise.all(steps);
      }),

    async writePhoto(photo) {
      const stored = await asStored(photo);
      await inTransaction(['photos'], async (tx) => {
        await tx.objectStore('photos').put(stored, photo.id);
      });
    },

    pick: (most) =>
      inTransaction(['waiting', 'picked', 'done', 'refused', 'trays'], async (tx) => {
        const waiting = await tx.objectStore('waiting').getAll();
        const picked = await tx.objectStore('picked').getAll();
        const sent = new Set([...picked.map(({ id }) => id), ...(await tx.objectStore('done').getAllKeys())]);
        const refused = new Set(await tx.objectStore('refused').getAllKeys());
        const amending = waiting.filter((entry) => entry.kind === 'count' && entry.amends.some((id) => !sent.has(id)));
        for (const trayId of new Set(amending.map((entry) => entry.trayId))) {
          const tray = await tx.objectStore('trays').get(trayId);
          for (const { id } of tray?.counts ?? []) sent.add(id);
        }
        const choice = pickToSend(
          { waiting, picked, isSent: (id) => sent.has(id), isRefused: (id) => refused.has(id) },
          most,
        );
        await Promise.all([
          ...choice.dropped.map((id) => tx.objectStore('waiting').delete(id)),
          ...choice.nowPicked.flatMap((entry): Promise<unknown>[] => [
            tx.objectStore('waiting').delete(entry.id),
            tx.objectStore('picked').put(entry, entry.id),
          ]),
        ]);
        return { batch: choice.batch, dropped: choice.dropped };
      }),

    settle: (done, refused) =>
      inTransaction(['picked', 'done', 'refused'], async (tx) => {
        const picked = tx.objectStore('picked');
        for (const id of done) {
          const entry = await picked.get(id);
          if (entry) await tx.objectStore('done').put(entry, id);
          await picked.delete(id);
        }
        for (const refusal of refused) {
          await tx.objectStore('refused').put(refusal, refusal.entry.id);
          await picked.delete(refusal.entry.id);
        }
      }),

    settlePhoto: (id, refused) =>
      inTransaction(['photos', 'refused'], async (tx) => {
        if (refused) await tx.objectStore('refused').put(refused, id);
        await tx.objectStore('photos').delete(id);
      }),

    keepRead: (lastRead, changed, gone, seen) =>
      inTransaction(['about', 'trays', 'done'], async (tx) => {
        await Promise.all([
          tx.objectStore('about').put(lastRead, 'lastRead'),
          ...changed.map((tray) => tx.objectStore('trays').put(tray, tray.id)),
          ...gone.map((id) => tx.objectStore('trays').delete(id)),
          ...seen.map((id) => tx.objectStore('done').delete(id)),
        ]);
      }),

    letGo: (id) => inTransaction(['refused'], async (tx) => tx.objectStore('refused').delete(id)),

    async takeOver(held, stale) {
      // Read before the transaction, which ends by itself while anything else is waited for.
      const photos = await Promise.all((held?.photos ?? []).map(asStored));
      await inTransaction(ALL, async (tx) => {
        const store = <StoreName extends Name>(name: StoreName) => tx.objectStore(name);
        const { waiting = [], picked = [], done = [], refused = [], trays = [], lastRead = null } = held ?? {};
        const ids = [...stale, ...[...waiting, ...picked, ...photos].map(({ id }) => id)];
        const steps: Promise<unknown>[] = [
          ...ids.flatMap((id) => [store('waiting').delete(id), store('picked').delete(id), store('photos').delete(id)]),
          ...waiting.map((entry) => store('waiting').put(entry, entry.id)),
          ...picked.map((entry) => store('picked').put(entry, entry.id)),
          ...done.map((entry) => store('done').put(entry, entry.id)),
          ...refused.map((refusal) => store('refused').put(refusal, refusal.entry.id)),
          ...photos.map((photo) => store('photos').put(photo, photo.id)),
          ...trays.map((tray) => store('trays').put(tray, tray.id)),
        ];
        if (lastRead) steps.push(store('about').put(lastRead, 'lastRead'));
        await Promise.all(steps);
      });
    },
  };
}

/** As bytes: some browsers lose the file behind a Blob that is kept. */
async function asStored({ picture, ...photo }: OwnPhoto): Promise<Stores['photos']['value']> {
  return { ...photo, bytes: await picture.arrayBuffer(), type: picture.type };
}

async function open(): Promise<IDBPDatabase<Stores>> {
  const database = await openDB<Stores>(NAME, 1, {
    upgrade(made) {
      for (const name of ALL) made.createObjectStore(name);
    },
    // A newer version of the bench in another tab wants to change the stores: let it.
    blocking: (_current, _blocked, event) => (event.target as IDBDatabase).close(),
  });
  return database;
}
