import type { BenchServer } from './bench-server';
import type { Bench, BenchView } from './bench-view';
import type { DeviceMemory, Remembered } from './device-memory';
import {
  addWaiting,
  type KnownHere,
  keepViews,
  knownFrom,
  nextId,
  trayChanged,
  viewOf,
  viewsInOrder,
} from './known-here';
import { memoryAtHand } from './memory-at-hand';
import { type Entered, newCount, type Standing, standingOf, standsAlready } from './new-count';
import type { OwnEntry, OwnPhoto } from './own-entries';
import { makeRounds } from './send-and-read';
import { whatWasEntered } from './what-was-entered';

/** What a bench needs of the world round it; tests bring their own. */
export interface Surroundings {
  /** @throws when this device keeps nothing */
  openMemory(): Promise<DeviceMemory>;
  /** for a device that keeps nothing */
  newDeviceId: string;
  server: BenchServer;
  now(): number;
  /** this device's calendar day */
  localDay(): string;
  /** @returns null when another tab is at it: then nothing was done */
  oneTabAtATime<Result>(work: () => Promise<Result>): Promise<Result | null>;
  /** tells the other tabs that the memory has changed */
  tellTabs(): void;
  /** something was entered, to be sent soon */
  entered(): void;
  /** somebody wants it sent now */
  hurry(): void;
}

/** A bench with what only its surroundings use. */
export interface RunningBench extends Bench {
  opened: Promise<void>;
  /** Sends all that waits and reads what is new; @returns whether the server was reached, null when another tab is at it */
  synchronise(): Promise<boolean | null>;
  /** Another tab has changed the memory. */
  lookAgain(): Promise<void>;
  /** The clock may have passed midnight, or the connection may have come or gone. */
  look(link?: 'online' | 'offline'): void;
}

/** One entry that can be taken back: which it was, and what held before it. */
interface Step extends Entered {
  madeId: string;
}

/**
 * The bench of one tab: everything that is entered shows at once, is in the device's memory right after, and goes to the
 * server when that can be reached. Nothing leaves the device's memory before the server has said what became of it.
 *
 * Checked in tests/app/bench/create-bench.test.ts and devices-agree.test.ts
 */
export function createBench(around: Surroundings): RunningBench {
  const listeners = new Set<() => void>();
  let known: KnownHere = knownFrom(nothingKnown(around.newDeviceId));
  const memory = memoryAtHand({ openMemory: around.openMemory, known: () => known, changed });
  let link: BenchView['link'] = 'online';
  const steps: Step[][] = [];
  let group: Step[] | null = null;
  let shown: BenchView | null = null;
  let today = '';
  /** writes on their way to the memory, which may have been read before they arrived */
  const underWay = new Map<string, { entry: OwnEntry; instead: string[] }>();

  const day = () => (known.lastRead?.todayIsFixed ? known.lastRead.today : around.localDay());

  function makeView(): BenchView {
    const now = day();
    if (now !== today) known.views.clear();
    today = now;
    const phase = !memory.isOpen() ? 'opening' : known.lastRead === null ? 'empty' : 'ready';
    return {
      phase,
      today,
      personName: known.lastRead?.person.name ?? null,
      trays: viewsInOrder(known, today),
      waiting: known.waiting.size + known.picked.size + known.photos.size,
      link,
      readAt: known.lastRead?.readAt ?? null,
      refused: [...known.refused.values()].map(({ entry, message }) => ({
        id: entry.id,
        trayNumber: entry.trayNumber,
        what: whatWasEntered(entry),
        message,
      })),
      canUndo: steps.length > 0,
      notKept: memory.notKept(),
    };
  }

  function changed(): void {
    shown = null;
    for (const listener of listeners) listener();
  }

  function setLink(next: BenchView['link']): void {
    if (link === next) return;
    link = next;
    changed();
  }

  function write(entry: OwnEntry, instead: string[]): void {
    addWaiting(known, entry, instead);
    underWay.set(entry.id, { entry, instead });
    // In this same tick: whatever happens to the page next, the browser has the entry.
    void memory.write(entry, instead).then(() => {
      underWay.delete(entry.id);
      around.tellTabs();
    });
    around.entered();
  }

  /** @returns the id under which it is written, or null when it stands there already */
  function writeCount(entered: Entered, over: readonly string[] | 'what stands'): string | null {
    const view = viewOf(known, entered.trayId, day());
    if (!view) throw new RangeError(`enter: trayId must be an open tray, got ${entered.trayId}`);
    const standing = standingOf(view, entered.dishId, entered.on);
    if (over === 'what stands' && standsAlready(standing, entered)) return null;
    const writing = { now: around.now(), byName: byName() };
    const ids = over === 'what stands' ? standing.ids : over;
    const { count, instead } = newCount(known, view, entered, ids, writing);
    write(count, instead);
    return count.id;
  }

  const byName = () => known.lastRead?.person.name ?? 'somebody';

  function inGroup(work: () => void): void {
    if (group) {
      work();
      return;
    }
    group = [];
    try {
      work();
    } finally {
      if (group.length > 0) steps.push(group);
      group = null;
      changed();
    }
  }

  function enter({ places = null, goesOn = false, ...entry }: Parameters<Bench['enter']>[0]): void {
    const entered: Entered = { ...entry, places };
    inGroup(() => {
      const view = viewOf(known, entered.trayId, day());
      const before: Standing | null = view ? standingOf(view, entered.dishId, entered.on) : null;
      const madeId = writeCount(entered, 'what stands');
      if (madeId === null) return;
      const last = goesOn ? steps.at(-1)?.at(-1) : undefined;
      if (last?.dishId === entered.dishId && last.on === entered.on) last.madeId = madeId;
      else group?.push({ ...entered, found: before?.found ?? null, places: before?.places ?? null, madeId });
    });
  }

  function takeBack({ madeId, ...before }: Step): void {
    const view = viewOf(known, before.trayId, day());
    if (!view) return;
    const { ids } = standingOf(view, before.dishId, before.on);
    // Somebody has written over it since, and has seen it: theirs holds.
    if (!ids.includes(madeId)) return;
    const restored = writeCount(before, [madeId]);
    // What was entered before it stands again, under a new id.
    const earlier = steps.flat().findLast(({ dishId, on }) => dishId === before.dishId && on === before.on);
    if (earlier && restored !== null) earlier.madeId = restored;
  }

  async function load(): Promise<void> {
    const remembered = await memory.load();
    const before = known;
    known = knownFrom(remembered);
    for (const { entry, instead } of underWay.values()) {
      const gone = known.picked.has(entry.id) || known.done.has(entry.id) || known.refused.has(entry.id);
      if (!gone) addWaiting(known, entry, instead);
    }
    keepViews(known, before);
  }

  const opened = memory.open().then(load).then(changed);

  const rounds = makeRounds({
    server: around.server,
    now: around.now,
    known: () => known,
    inMemory: memory.use,
    photoSettled: memory.photoSettled,
    changed,
    tellTabs: around.tellTabs,
  });

  async function lookAgain(): Promise<void> {
    await opened;
    await load();
    changed();
  }

  async function synchronise(): Promise<boolean | null> {
    await opened;
    return around.oneTabAtATime(async () => {
      if (await memory.regain()) {
        await lookAgain();
        around.tellTabs();
      }
      const reached = await rounds.goRound(link === 'online' && known.lastRead !== null);
      setLink(reached.ok ? 'online' : reached.why);
      return reached.ok;
    });
  }

  return {
    opened,
    synchronise,
    view: () => {
      shown ??= makeView();
      return shown;
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    enter,
    together: inGroup,
    undo() {
      const last = steps.pop();
      for (const step of [...(last ?? [])].reverse()) takeBack(step);
      changed();
    },
    addNote({ trayId, dish, on, text }) {
      const trayNumber = known.trays.get(trayId)?.number ?? '';
      const about = { id: nextId(known, around.now()), trayId, trayNumber, byName: byName() };
      write({ kind: 'note', ...about, dish, on, text, madeAt: new Date(around.now()).toISOString() }, []);
      changed();
    },
    async addPhoto({ trayId, dish, on, picture }) {
      const about = { id: nextId(known, around.now()), trayId, byName: byName() };
      const trayNumber = known.trays.get(trayId)?.number ?? '';
      const made = { dish, on, madeAt: new Date(around.now()).toISOString() };
      const photo: OwnPhoto = { kind: 'photo', ...about, trayNumber, ...made, picture };
      known.photos.set(photo.id, photo);
      trayChanged(known, trayId);
      changed();
      await memory.writePhoto(photo);
      around.tellTabs();
      around.entered();
    },
    letGo(id) {
      known.refused.delete(id);
      changed();
      void memory.use((its) => its.letGo(id)).then(around.tellTabs);
    },
    tryNow: around.hurry,
    lookAgain,
    look(now) {
      if (now === 'offline') setLink('offline');
      if (now === 'online' && link === 'offline') setLink('online');
      if (memory.isOpen() && day() !== today) changed();
    },
  };
}

const nothingKnown = (deviceId: string): Remembered => ({
  ...{ deviceId, lastRead: null, trays: [], waiting: [], picked: [], done: [], photos: [], refused: [] },
});
