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

const BUILT_FILE = /(?:\/_next\/)?(static\/[\w~%.@()[\]-]+(?:\/[\w~%.@()[\]-]+)*\.(?:js|css|woff2?))/g;

/**
 * Keeps a page of the bench, as the server answered, with all files that it names.
 *
 * @param page       its body is read; give a clone
 * @param alsoUsed   addresses of further built files that the page has loaded: fonts, scripts that come later
 * @returns whether it is kept; if not, what was kept before stays whole
 */
export async function keepPage(page: Response, alsoUsed: readonly string[] = []): Promise<boolean> {
  const text = await page.clone().text();
  const named = [...text.matchAll(BUILT_FILE)].map((match) => `/_next/${match[1]}`);
  const files = await caches.open(FILES);
  const pages = await caches.open(PAGES);
  const needed = [...new Set(named)];
  const arrived = await Promise.all(needed.map((address) => keepFile(files, address)));
  if (arrived.includes(false)) return false;
  const extra = alsoUsed.filter((address) => address.startsWith('/_next/static/') && !needed.includes(address));
  // A font that cannot be had is no reason to do without the page.
  await Promise.all(extra.map((address) => keepFile(files, address)));

  const before = await keptLists(pages);
  const list = [...needed, ...extra];
  const previous = before.find((one) => !sameFiles(one, needed)) ?? [];
  await pages.put(BENCH, page);
  await pages.put(LISTS, Response.json([list, previous]));
  const wanted = new Set([...list, ...previous]);
  for (const { url } of await files.keys()) if (!wanted.has(new URL(url).pathname)) await files.delete(url);
  return true;
}

async function keptLists(pages: Cache): Promise<string[][]> {
  const kept = await pages.match(LISTS);
  return kept ? ((await kept.json()) as string[][]) : [];
}

/** A list of files is of this page when it holds all that the page names. */
const sameFiles = (list: readonly string[], needed: readonly string[]) =>
  needed.every((address) => list.includes(address));

async function keepFile(files: Cache, address: string): Promise<boolean> {
  if (await files.match(address)) return true;
  try {
    const answer = await fetch(address);
    if (!answer.ok) return false;
    await files.put(address, answer);
    return true;
  } catch {
    return false;
  }
}

export const keptPage = async (): Promise<Response | undefined> => (await caches.open(PAGES)).match(BENCH);

export const keptFile = async (request: Request): Promise<Response | undefined> =>
  (await caches.open(FILES)).match(request);
