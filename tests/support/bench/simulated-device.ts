import type { BenchServer, Reached } from '@/app/bench/_store/bench-server';
import { createBench, type RunningBench } from '@/app/bench/_store/create-bench';
import type { DeviceMemory } from '@/app/bench/_store/device-memory';
import { memoryInRam } from '@/app/bench/_store/memory-in-ram';
import type { OwnEntry } from '@/app/bench/_store/own-entries';
import { uuidV7 } from '@/lib/domain/ids/uuid-v7';
import type { SentEntries } from '@/lib/schemas/bench-wire';
import type { Person } from '@/lib/server/auth/roles';
import { addBenchEntries } from '@/lib/server/commands/add-bench-entries';
import { getBenchSnapshot } from '@/lib/server/queries/bench-snapshot';

/** How the way to the server is. */
export interface Line {
  /** nothing gets through */
  cut: boolean;
  /** what is sent arrives, and its answer does not: so many times */
  answersToLose: number;
  /** who is signed in; null: nobody, the session has ended */
  person: Person | null;
  /** done once, after the next batch has arrived and before its answer does */
  meanwhile: (() => void) | null;
  /** whether photographs arrive */
  takesPhotos: boolean;
}

/** What room the phone has. */
export interface Room {
  /** nothing more can be written; what is there can be read and deleted */
  full: boolean;
  /** counts fit, a photograph does not */
  fullForPhotos: boolean;
}

export interface SimulatedDevice {
  line: Line;
  room: Room;
  tabs: RunningBench[];
  memory: DeviceMemory;
  /** every entry that was written into the memory, in order */
  written: OwnEntry[];
  /** every batch that reached the server */
  sent: SentEntries[];
  /** The page is closed and opened: what its memory holds is all that is left. */
  reload(tab: number): Promise<void>;
}

/** The wire: what is not JSON does not get over it. */
const overTheWire = <Value>(value: Value): Value => JSON.parse(JSON.stringify(value)) as Value;

/**
 * A phone in memory with one browser tab or several, and the real server behind a line that can be cut. The clock is the
 * test's; the phone's may be wrong.
 */
export async function simulatedDevice({
  person,
  now,
  localDay,
  tabs = 1,
}: {
  person: Person;
  now(): number;
  localDay(): string;
  tabs?: number;
}): Promise<SimulatedDevice> {
  const newDeviceId = uuidV7({ now: now(), after: null, random: crypto.getRandomValues(new Uint8Array(8)) });
  const line: Line = { cut: false, answersToLose: 0, person, meanwhile: null, takesPhotos: false };
  const written: OwnEntry[] = [];
  const sent: SentEntries[] = [];
  const nothing = { deviceId: newDeviceId, lastRead: null };
  const real = memoryInRam({ ...nothing, trays: [], waiting: [], picked: [], done: [], photos: [], refused: [] });
  const room: Room = { full: false, fullForPhotos: false };
  const needsRoom = (isFull = room.full) => {
    if (isFull) throw new DOMException('no room', 'QuotaExceededError');
  };
  const memory: DeviceMemory = {
    ...real,
    async write(entry, instead) {
      needsRoom();
      written.push(structuredClone(entry));
      return real.write(entry, instead);
    },
    async writePhoto(photo) {
      needsRoom(room.full || room.fullForPhotos);
      return real.writePhoto(photo);
    },
    async pick(most) {
      needsRoom();
      return real.pick(most);
    },
    async settle(done, refused) {
      needsRoom();
      return real.settle(done, refused);
    },
    async keepRead(...read) {
      needsRoom();
      return real.keepRead(...read);
    },
    async takeOver(held, stale) {
      if (held) needsRoom();
      return real.takeOver(held, stale);
    },
  };

  async function reached<Value>(ask: (person: Person) => Promise<Value>): Promise<Reached<Value>> {
    if (line.cut) return { ok: false, why: 'offline' };
    if (!line.person) return { ok: false, why: 'sign-in-needed' };
    const value = overTheWire(await ask(line.person));
    if (line.answersToLose > 0) {
      line.answersToLose -= 1;
      return { ok: false, why: 'no-answer' };
    }
    return { ok: true, value };
  }

  const server: BenchServer = {
    read: () => reached(async (asking) => ({ snapshot: getBenchSnapshot(asking), tag: null })),
    send: (entries) =>
      reached(async (asking) => {
        sent.push(overTheWire(entries));
        const answers = await addBenchEntries(asking, overTheWire(entries));
        line.meanwhile?.();
        line.meanwhile = null;
        return answers;
      }),
    // Pictures are not JSON; what becomes of them at the server is tested there.
    sendPhoto: async ({ id }) =>
      line.takesPhotos && !line.cut
        ? { ok: true, value: { id, outcome: 'kept' } }
        : { ok: false, why: line.cut ? 'offline' : 'no-answer' },
  };

  let busy = false;
  const device: SimulatedDevice = { line, room, tabs: [], memory, written, sent, reload };
  const openTab = (tab: number) =>
    createBench({
      openMemory: async () => memory,
      newDeviceId,
      server,
      now,
      localDay,
      async oneTabAtATime(work) {
        if (busy) return null;
        busy = true;
        try {
          return await work();
        } finally {
          busy = false;
        }
      },
      tellTabs: () => {
        for (const [index, other] of device.tabs.entries()) if (index !== tab) void other.lookAgain();
      },
      entered: () => undefined,
      hurry: () => undefined,
    });

  async function reload(tab: number): Promise<void> {
    const bench = openTab(tab);
    device.tabs[tab] = bench;
    await bench.opened;
  }
  for (let tab = 0; tab < tabs; tab += 1) await reload(tab);
  return device;
}
