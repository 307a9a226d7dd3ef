import type { NotKept } from './bench-view';
import type { DeviceMemory, Remembered } from './device-memory';
import { asRemembered, type KnownHere } from './known-here';
import { memoryInRam } from './memory-in-ram';
import type { OwnPhoto } from './own-entries';

interface Around {
  /** @throws when this device keeps nothing */
  openMemory(): Promise<DeviceMemory>;
  /** what the tab knows at this moment; after a loss it is all there is */
  known(): KnownHere;
  changed(): void;
}

/**
 * The device's memory as long as it takes what it is given. When it does not (no room left, a private window), this page
 * holds everything, from where it is sent as ever; and the device's memory is asked again with every round, so that it
 * takes over what is still held here as soon as there is room.
 *
 * Checked in tests/app/bench/no-room.test.ts and tests/e2e/bench-no-room.spec.ts
 */
export function memoryAtHand({ openMemory, known, changed }: Around) {
  let onDevice: DeviceMemory | null = null;
  let current: DeviceMemory | null = null;
  let lost: { noRoom: boolean } | null = null;
  /** too large for what room there is, while counts are not */
  const photosInHand = new Map<string, OwnPhoto>();
  let noRoomForPhotos = false;
  /** ids under which the device's memory may have something waiting that this page has since sent or written over */
  const stale = new Set<string>();
  /** counts what changes the memory from here, so that a reading of it that was overtaken is noticed */
  let changes = 0;

  async function open(): Promise<void> {
    try {
      onDevice = await openMemory();
      current = onDevice;
    } catch (error) {
      lose(error);
    }
  }

  function lose(error: unknown): DeviceMemory {
    lost = { noRoom: isNoRoom(error) };
    const { waiting, picked, photos } = known();
    for (const map of [waiting, picked, photos]) for (const id of map.keys()) stale.add(id);
    current = memoryInRam(asRemembered(known()));
    changed();
    return current;
  }

  async function use<Result>(work: (memory: DeviceMemory) => Promise<Result>): Promise<Result> {
    const asked = current as DeviceMemory;
    changes += 1;
    try {
      return await work(asked);
    } catch (error) {
      return work(current === asked ? lose(error) : (current as DeviceMemory));
    } finally {
      changes += 1;
    }
  }

  /** @param instead  ids of entries that it stands for, and which the device's memory may still have if this fails */
  async function write(entry: Parameters<DeviceMemory['write']>[0], instead: readonly string[]): Promise<void> {
    await use((its) => its.write(entry, instead));
    if (lost) for (const id of instead) stale.add(id);
  }

  async function writePhoto(photo: OwnPhoto): Promise<void> {
    changes += 1;
    try {
      await (current as DeviceMemory).writePhoto(photo);
      if (photosInHand.delete(photo.id)) changed();
    } catch (error) {
      photosInHand.set(photo.id, photo);
      noRoomForPhotos = isNoRoom(error);
      changed();
    } finally {
      changes += 1;
    }
  }

  /** @returns what nothing from here has changed while it was read */
  async function load(): Promise<Remembered> {
    for (;;) {
      const before = changes;
      const asked = current as DeviceMemory;
      const remembered = await asked
        .load()
        .catch((error: unknown) => (current === asked ? lose(error) : current)?.load());
      if (remembered && before === changes)
        return { ...remembered, photos: withoutDoubles(remembered.photos, photosInHand) };
    }
  }

  /** Asks the device's memory again; @returns whether it has everything now that it had not, and is to be read anew */
  async function regain(): Promise<boolean> {
    for (const photo of [...photosInHand.values()]) await writePhoto(photo);
    if (!lost) return false;
    try {
      onDevice ??= await openMemory();
      for (;;) {
        const before = changes;
        const held = await (current as DeviceMemory).load();
        const waits = [...held.waiting, ...held.picked, ...held.photos].map(({ id }) => id);
        await onDevice.takeOver(held, [...stale]);
        for (const id of waits) stale.add(id);
        if (before === changes) break;
      }
      current = onDevice;
      lost = null;
      stale.clear();
      changes += 1;
      return true;
    } catch {
      await forgetSent();
      return false;
    }
  }

  /** To forget needs no room. What was sent from here must not be found waiting when the page is opened again. */
  async function forgetSent(): Promise<void> {
    const { waiting, picked, photos } = known();
    const sent = [...stale].filter((id) => !waiting.has(id) && !picked.has(id) && !photos.has(id));
    if (sent.length === 0 || !onDevice) return;
    try {
      await onDevice.takeOver(null, sent);
      for (const id of sent) stale.delete(id);
    } catch {
      // Not even that: the server knows by its id what it has.
    }
  }

  return {
    open,
    use,
    write,
    writePhoto,
    load,
    regain,
    photoSettled: (id: string): void => void photosInHand.delete(id),
    isOpen: () => current !== null,
    notKept: (): NotKept | null => {
      if (lost) return { what: 'everything', ...lost };
      return photosInHand.size > 0 ? { what: 'photos', noRoom: noRoomForPhotos } : null;
    },
  };
}

const withoutDoubles = (kept: readonly OwnPhoto[], inHand: ReadonlyMap<string, OwnPhoto>): OwnPhoto[] => [
  ...kept.filter(({ id }) => !inHand.has(id)),
  ...inHand.values(),
];

const isNoRoom = (error: unknown): boolean => error instanceof Error && error.name === 'QuotaExceededError';
