/*
 * The service worker: it makes the bench work without a connection, and nothing else. Everything but the bench's page and
 * its built files goes to the server as if there were no worker.
 */
import { NetworkFirst, NetworkOnly, Serwist } from 'serwist';
import { BENCH, keepPage, keptFile, keptPage } from './keep-page';
import { notConnected } from './not-connected';

/** What of the worker's world is used here; TypeScript's own names for it clash with those of a page. */
interface WorkerScope {
  /** changes with every build, so that a new Hilum brings a new worker */
  __SW_MANIFEST: unknown;
  hilumBuild: unknown;
  addEventListener(type: 'message', listener: (event: MessageEvent & ExtendableEvent) => void): void;
}
interface ExtendableEvent {
  waitUntil(work: Promise<unknown>): void;
}
declare const self: WorkerScope;

/** So long a phone at the edge of the signal waits for the page before it takes the one it has. */
const PATIENCE_SECONDS = 3;

const bench = new NetworkFirst({
  networkTimeoutSeconds: PATIENCE_SECONDS,
  plugins: [
    {
      // A server that is just being started again is no reason to do without the bench.
      fetchDidSucceed: async ({ response }) => {
        if (response.status >= 500) throw new Error(`the server answers ${response.status}`);
        return response;
      },
      // Sent to sign in, or refused: that is shown, not kept.
      cacheWillUpdate: async ({ response }) => {
        if (isBench(response)) await keepPage(response.clone());
        // keepPage has put it away itself, whole or not at all.
        return null;
      },
      cachedResponseWillBeUsed: async () => keptPage(),
      handlerDidError: sayNotConnected,
    },
  ],
});

const others = new NetworkOnly({
  plugins: [{ handlerDidError: ({ request }) => withoutServer(new URL(request.url)) }],
});

/** The code on a dish opens its tray without a connection too. */
async function withoutServer({ pathname }: URL): Promise<Response> {
  const tray = /^\/t\/(T-\d+)/i.exec(decodeURIComponent(pathname))?.[1];
  if (tray && (await keptPage())) return Response.redirect(`${BENCH}#${tray.toUpperCase()}`);
  return sayNotConnected();
}

async function sayNotConnected(): Promise<Response> {
  return notConnected({ benchIsKept: (await keptPage()) !== undefined });
}

const isBench = (page: Response) =>
  page.status === 200 && !page.redirected && (page.headers.get('Content-Type') ?? '').startsWith('text/html');

new Serwist({
  // A running bench is never changed under the hands of whoever counts; they say when.
  skipWaiting: false,
  clientsClaim: true,
  runtimeCaching: [
    {
      matcher: ({ request, sameOrigin, url }) => sameOrigin && request.mode === 'navigate' && url.pathname === BENCH,
      handler: bench,
    },
    {
      matcher: ({ request, sameOrigin, url }) =>
        sameOrigin && request.mode === 'navigate' && !url.pathname.startsWith('/api/'),
      handler: others,
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
  event.waitUntil(keepAgain(said.files.map(String)));
});

async function keepAgain(files: string[]): Promise<void> {
  try {
    const page = await fetch(BENCH, { cache: 'no-store', redirect: 'manual' });
    if (isBench(page)) await keepPage(page, files);
  } catch {
    // No connection: what is kept stays.
  }
}

// Without this the build would leave it out, and the workers of two builds would be the same.
self.hilumBuild = self.__SW_MANIFEST;
