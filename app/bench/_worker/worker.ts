/*
 * The service worker: it makes the bench work without a connection, and nothing else. Everything but the bench's page and
 * its built files goes to the server as if there were no worker.
 */
import { Serwist } from 'serwist';
import { askForPage, BENCH, isBench, keepPage, keptFile, keptPage } from './keep-page';
import { notConnected } from './not-connected';
import { inTime } from './patience';

/** What of the worker's world is used here; TypeScript's own names for it clash with those of a page. */
interface WorkerScope {
  /** changes with every build, so that a new Hilum brings a new worker */
  __SW_MANIFEST: unknown;
  hilumBuild: unknown;
  clients: { matchAll(which: { type: 'window'; includeUncontrolled: boolean }): Promise<readonly OpenWindow[]> };
  addEventListener(type: 'message', listener: (event: Message) => void): void;
}
interface OpenWindow {
  id: string;
  url: string;
}
interface Extendable {
  waitUntil(work: Promise<unknown>): void;
}
interface Message extends Extendable {
  data: unknown;
  source: OpenWindow | null;
}
declare const self: WorkerScope;

/**
 * The page of the server, once all its files are here; else the one that is kept. A page whose files did not arrive would
 * be an empty screen.
 */
async function openBench(request: Request, event: Extendable): Promise<Response> {
  const kept = await keptPage();
  if (!kept) return openFirst(request, event);
  const whole = askForPage(request).then(async (page) => {
    if (isBench(page) && (await keepPage(page.clone())) === 'not-whole') throw new Error('its files are missing');
    return page;
  });
  // Also when the kept one is shown meanwhile: the next time the newer one is.
  event.waitUntil(whole.catch(() => undefined));
  return (await inTime(whole).catch(() => null)) ?? kept;
}

/** With nothing to go on with there is nothing but to wait. */
async function openFirst(request: Request, event: Extendable): Promise<Response> {
  try {
    const page = await askForPage(request);
    if (isBench(page)) event.waitUntil(keepPage(page.clone()));
    return page;
  } catch {
    return sayNotConnected();
  }
}

/** Any other page is the server's. The code on a dish opens its tray without it too. */
async function openElsewhere(request: Request, { pathname }: URL): Promise<Response> {
  const tray = /^\/t\/(T-\d+)/i.exec(decoded(pathname))?.[1];
  const isHere = tray !== undefined && (await keptPage()) !== undefined;
  try {
    if (!isHere) return await fetch(request);
    return (await inTime(askForPage(request))) ?? atBench(tray);
  } catch {
    return isHere ? atBench(tray) : sayNotConnected();
  }
}

const atBench = (tray: string) => Response.redirect(`${BENCH}#${tray.toUpperCase()}`);

function decoded(pathname: string): string {
  try {
    return decodeURIComponent(pathname);
  } catch {
    return pathname;
  }
}

async function sayNotConnected(): Promise<Response> {
  return notConnected({ benchIsKept: (await keptPage()) !== undefined });
}

new Serwist({
  // A running bench is never changed under the hands of whoever counts; they say when.
  skipWaiting: false,
  clientsClaim: true,
  runtimeCaching: [
    {
      matcher: ({ request, sameOrigin, url }) => sameOrigin && request.mode === 'navigate' && url.pathname === BENCH,
      handler: ({ request, event }) => openBench(request, event),
    },
    {
      matcher: ({ request, sameOrigin, url }) =>
        sameOrigin && request.mode === 'navigate' && !url.pathname.startsWith('/api/'),
      handler: ({ request, url }) => openElsewhere(request, url),
    },
    {
      matcher: ({ sameOrigin, url }) => sameOrigin && url.pathname.startsWith('/_next/static/'),
      handler: async ({ request }) => (await keptFile(request)) ?? fetch(request),
    },
  ],
}).addEventListeners();

/** A page of the bench has loaded, and says which built files it has used. */
self.addEventListener('message', (event) => {
  const said = event.data as { kind?: unknown; files?: unknown } | null;
  if (said?.kind !== 'keep-bench' || !Array.isArray(said.files)) return;
  event.waitUntil(keepAgain(said.files.map(String), event.source));
});

async function keepAgain(files: string[], asking: OpenWindow | null): Promise<void> {
  try {
    const page = await askForPage();
    const windows = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
    const alone = windows.every(({ id, url }) => id === asking?.id || new URL(url).pathname !== BENCH);
    if (isBench(page)) await keepPage(page, { files, alone });
  } catch {
    // No connection: what is kept stays.
  }
}

// Without this the build would leave it out, and the workers of two builds would be the same.
self.hilumBuild = self.__SW_MANIFEST;
