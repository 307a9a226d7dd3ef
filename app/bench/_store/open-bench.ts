import { uuidV7 } from '@/lib/domain/ids/uuid-v7';
import { benchServer } from './bench-server';
import type { Bench } from './bench-view';
import { createBench } from './create-bench';
import { keepInTouch, type Touch } from './keep-in-touch';
import { localDay } from './local-day';
import { memoryInIndexedDb } from './memory-in-indexeddb';

const LOCK = 'hilum-bench';

let opened: Bench | undefined;

/** The bench of this page; in the browser only. It is made at the first call and lives as long as the page. */
export function openBench(): Bench {
  opened ??= makeBench();
  return opened;
}

function makeBench(): Bench {
  const tabs = 'BroadcastChannel' in window ? new BroadcastChannel(LOCK) : null;
  const newDeviceId = uuidV7({ now: Date.now(), after: null, random: crypto.getRandomValues(new Uint8Array(8)) });
  let touch: Touch | undefined;
  const bench = createBench({
    openMemory: () => memoryInIndexedDb(newDeviceId),
    newDeviceId,
    server: benchServer,
    now: Date.now,
    localDay,
    oneTabAtATime,
    tellTabs: () => tabs?.postMessage('changed'),
    entered() {
      askToStay();
      touch?.soon();
    },
    hurry: () => touch?.now(),
  });
  touch = keepInTouch(bench, tabs);
  warnBeforeLosing(bench);
  return bench;
}

/** Where the page is all that holds an entry, the browser asks before it closes it. */
function warnBeforeLosing(bench: Bench): void {
  addEventListener('beforeunload', (event) => {
    const { notKept, waiting } = bench.view();
    if (notKept && waiting > 0) event.preventDefault();
  });
}

/** Where tabs cannot agree who sends, both do: the server takes each entry once. */
function oneTabAtATime<Result>(work: () => Promise<Result>): Promise<Result | null> {
  if (!navigator.locks) return work();
  return navigator.locks.request(LOCK, { ifAvailable: true }, async (lock) => (lock ? await work() : null));
}

let asked = false;

/** A browser short of room may throw away what pages keep, unless they have asked. */
function askToStay(): void {
  if (asked || !navigator.storage?.persist) return;
  asked = true;
  void navigator.storage.persist().catch(() => false);
}
