import { useSyncExternalStore } from 'react';

const WORKER = '/worker/sw.js';
const BUILT = '/_next/static/';
/** A page that stays open for days asks now and then whether there is a new Hilum. */
const ASK_EVERY_MS = 15 * 60_000;
/** Files that come one after the other are named to the worker together. */
const FILES_PAUSE_MS = 1_500;

let waiting: ServiceWorker | null = null;
const listeners = new Set<() => void>();
let begun = false;

/**
 * How to go on with a newer Hilum that is ready, or null while there is none. The page that is open keeps working as it
 * is until then. Using this makes the bench work without a connection from the first visit on.
 */
export function useNewVersion(): (() => void) | null {
  return useSyncExternalStore(subscribe, current, () => null);
}

const current = () => (waiting ? useIt : null);

function useIt(): void {
  // Reload when the new worker has taken over: then page and files are of one version.
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
  waiting?.postMessage({ type: 'SKIP_WAITING' });
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  begin();
  return () => listeners.delete(listener);
}

function begin(): void {
  // In development files change under their names; there the bench needs its server.
  if (begun || process.env.NODE_ENV !== 'production' || !('serviceWorker' in navigator)) return;
  begun = true;
  void navigator.serviceWorker
    .register(WORKER, { scope: '/', updateViaCache: 'none' })
    .then(follow)
    .catch(() => undefined);
  nameFiles();
}

function follow(registration: ServiceWorkerRegistration): void {
  setWaiting(registration.waiting);
  const watch = (coming: ServiceWorker | null) =>
    coming?.addEventListener('statechange', () => {
      // Without a controller it is the first worker of this device, which takes over by itself.
      if (coming.state === 'installed' && navigator.serviceWorker.controller) setWaiting(coming);
      else if (coming.state === 'activated' || coming.state === 'redundant') setWaiting(registration.waiting);
    });
  // One that the browser found before this page listened is on its way already.
  watch(registration.installing);
  registration.addEventListener('updatefound', () => watch(registration.installing));
  let asked = Date.now();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || Date.now() - asked < ASK_EVERY_MS) return;
    asked = Date.now();
    void registration.update().catch(() => undefined);
  });
}

function setWaiting(worker: ServiceWorker | null): void {
  if (worker === waiting) return;
  waiting = worker;
  for (const listener of listeners) listener();
}

/** Tells the worker which built files this page has loaded, so that it keeps them. */
function nameFiles(): void {
  const files = new Set<string>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const tell = () =>
    void navigator.serviceWorker.ready.then(({ active }) =>
      active?.postMessage({ kind: 'keep-bench', files: [...files] }),
    );
  const note = (entries: PerformanceEntryList) => {
    const before = files.size;
    for (const { name } of entries) {
      const { origin, pathname } = new URL(name, location.href);
      if (origin === location.origin && pathname.startsWith(BUILT)) files.add(pathname);
    }
    if (files.size === before) return;
    clearTimeout(timer);
    timer = setTimeout(tell, FILES_PAUSE_MS);
  };
  new PerformanceObserver((list) => note(list.getEntries())).observe({ type: 'resource', buffered: true });
}
