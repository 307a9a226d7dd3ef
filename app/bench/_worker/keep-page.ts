/*
 * The one page that works without a connection, kept on the device with every file it needs. The page is put away last,
 * when all its files are there, so that what is kept is always whole; and since the files are named by their content, a
 * page never runs with files of another version.
 */

const PAGES = 'hilum-bench-page';
const FILES = 'hilum-bench-files';
export const BENCH = '/bench';
/** which files the kept page and the one before it use: a tab may still be running that one */
const LISTS = '/bench/files-kept';
/** A request that gets no answer is given up, or it would hold one of the few lines that a browser has to a server. */
const GIVE_UP_AFTER_MS = 60_000;

const BUILT_FILE = /(?:\/_next\/)?(static\/[\w~%.@()[\]-]+(?:\/[\w~%.@()[\]-]+)*\.(?:js|css|woff2?))/g;

/** What a page of the bench has told of itself. */
export interface PageInUse {
  /** addresses of built files that it has loaded: fonts, scripts that come later */
  files: readonly string[];
  /** no other window shows the bench */
  alone: boolean;
}

/** 'kept'; or all its files can be had, and there is no room; or not all of them can be had. What was kept stays whole. */
export type Keeping = 'kept' | 'no-room' | 'not-whole';

/**
 * Keeps a page of the bench, as the server answered, with all files that it names.
 *
 * @param page   its body is read; give a clone
 * @param inUse  of the page that asks for it; left out while a page is only being opened
 * Checked in tests/e2e/bench-new-build.spec.ts and bench-silent-server.spec.ts
 */
export async function keepPage(page: Response, inUse: PageInUse = { files: [], alone: false }): Promise<Keeping> {
  const text = await page.clone().text();
  const named = [...text.matchAll(BUILT_FILE)].map((match) => `/_next/${match[1]}`);
  const needed = [...new Set(named)];
  const files = await caches.open(FILES);
  const arrived = await Promise.all(needed.map((address) => keepFile(files, address)));
  if (arrived.includes('not-whole')) return 'not-whole';
  if (arrived.includes('no-room')) return 'no-room';
  const extra = inUse.files.filter((address) => address.startsWith('/_next/static/') && !needed.includes(address));
  // A font that cannot be had is no reason to do without the page.
  await Promise.all(extra.map((address) => keepFile(files, address)));
  try {
    await oneAfterTheOther(() => putAway(page, files, { needed, extra, inUse }));
    return 'kept';
  } catch {
    return 'no-room';
  }
}

async function putAway(
  page: Response,
  files: Cache,
  { needed, extra, inUse }: { needed: string[]; extra: string[]; inUse: PageInUse },
): Promise<void> {
  const pages = await caches.open(PAGES);
  const before = await keptLists(pages);
  const same = before.find((list) => isOfPage(list, needed)) ?? [];
  const list = [...new Set([...needed, ...same, ...extra])];
  const older = before.find((one) => !isOfPage(one, needed)) ?? [];
  // Whoever still runs the page before this one may yet ask for its files.
  const olderRuns = !inUse.alone || inUse.files.some((address) => isScript(address) && !needed.includes(address));
  const previous = olderRuns ? older : [];
  await pages.put(BENCH, page);
  await pages.put(LISTS, Response.json([list, previous]));
  const wanted = new Set([...list, ...previous]);
  for (const { url } of await files.keys()) if (!wanted.has(new URL(url).pathname)) await files.delete(url);
}

let turn: Promise<unknown> = Promise.resolve();

/** Two tabs that are opened together must not sweep away each other's files. */
function oneAfterTheOther(work: () => Promise<void>): Promise<void> {
  const done = turn.then(work);
  turn = done.catch(() => undefined);
  return done;
}

async function keptLists(pages: Cache): Promise<string[][]> {
  const kept = await pages.match(LISTS);
  return kept ? ((await kept.json()) as string[][]) : [];
}

/** A list of files is of this page when it holds all that the page names. */
const isOfPage = (list: readonly string[], needed: readonly string[]) =>
  needed.every((address) => list.includes(address));

const isScript = (address: string) => address.endsWith('.js');

async function keepFile(files: Cache, address: string): Promise<Keeping> {
  if (await files.match(address)) return 'kept';
  let answer: Response;
  try {
    answer = await fetch(address, { signal: AbortSignal.timeout(GIVE_UP_AFTER_MS) });
    if (!answer.ok) return 'not-whole';
    // All of it: a line that breaks in the middle is no lack of room.
    await answer.clone().arrayBuffer();
  } catch {
    return 'not-whole';
  }
  try {
    await files.put(address, answer);
    return 'kept';
  } catch {
    return 'no-room';
  }
}

/**
 * The bench, or a page that leads to it, as the server has it now.
 *
 * @param request  what the browser asked for; left out, the bench
 * @throws when the server is not reached, does not answer for a minute, or is just being started again
 */
export async function askForPage(request: Request | string = BENCH): Promise<Response> {
  const answer = await fetch(request, {
    cache: 'no-store',
    redirect: 'manual',
    signal: AbortSignal.timeout(GIVE_UP_AFTER_MS),
  });
  if (answer.status >= 500) throw new Error(`the server answers ${answer.status}`);
  return answer;
}

/** Whether it is the bench, and neither a way to the sign-in nor a refusal: those are shown, not kept. */
export const isBench = (page: Response) =>
  page.status === 200 && !page.redirected && (page.headers.get('Content-Type') ?? '').startsWith('text/html');

export const keptPage = async (): Promise<Response | undefined> => (await caches.open(PAGES)).match(BENCH);

export const keptFile = async (request: Request): Promise<Response | undefined> =>
  (await caches.open(FILES)).match(request);
