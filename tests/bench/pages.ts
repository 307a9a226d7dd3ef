/**
 * How fast the long lists come over loopback: a fixed number of requests by four connections at once, after a warm-up.
 * Arguments: the address of a running server whose collection is judged. Prints one line of JSON, PageFigures[].
 */
import autocannon from 'autocannon';

export interface PageFigures {
  name: string;
  path: string;
  requests: number;
  requestsPerSecond: number;
  /** milliseconds from request to last byte */
  p50: number;
  p95: number;
  p99: number;
  /** one page, as sent */
  kilobytes: number;
}

const PAGES = [
  { name: 'lots, first page', path: '/collection/lots' },
  { name: 'lots, a deep page', path: '/collection/lots?page=150' },
  { name: 'lots, a search', path: '/collection/lots?q=bean' },
  { name: 'lots, a filter', path: '/collection/lots?action=regrow&sort=-urgency' },
  { name: 'regrow list, first page', path: '/regrow' },
  { name: 'regrow list, filtered', path: '/regrow?action=regrow' },
];
const CONNECTIONS = 4;
const WARM_UP_REQUESTS = 40;
const REQUESTS = 400;

async function measurePage(address: string, { name, path }: (typeof PAGES)[number]): Promise<PageFigures> {
  const url = `${address}${path}`;
  const page = await fetch(url);
  const { length } = await page.text();
  if (!page.ok) throw new Error(`${path} answered ${page.status}`);
  await send(url, WARM_UP_REQUESTS);
  const { milliseconds, seconds } = await send(url, REQUESTS);
  return {
    name,
    path,
    requests: milliseconds.length,
    requestsPerSecond: milliseconds.length / seconds,
    p50: quantile(milliseconds, 0.5),
    p95: quantile(milliseconds, 0.95),
    p99: quantile(milliseconds, 0.99),
    kilobytes: length / 1024,
  };
}

async function send(url: string, amount: number): Promise<{ milliseconds: number[]; seconds: number }> {
  const milliseconds: number[] = [];
  const instance = autocannon({ url, amount, connections: CONNECTIONS });
  instance.on('response', (_client, _status, _bytes, time) => milliseconds.push(time));
  const { non2xx, errors, duration } = await instance;
  if (non2xx + errors > 0) throw new Error(`${url}: ${non2xx} answers that were no page, ${errors} errors`);
  return { milliseconds: milliseconds.sort((a, b) => a - b), seconds: duration };
}

/** The value that this share of the sorted values does not exceed. */
function quantile(sorted: readonly number[], share: number): number {
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}

const address = process.argv[2];
if (!address) throw new Error('the address of a running server is needed');
const figures: PageFigures[] = [];
for (const page of PAGES) figures.push(await measurePage(address, page));
process.stdout.write(`${JSON.stringify(figures)}\n`);
