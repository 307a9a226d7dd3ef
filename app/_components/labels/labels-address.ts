import type { Address } from '@/app/(bank)/reference/_parts/read-question';
import { readPacketList, writePacketList } from '@/lib/domain/labels/packet-list';
import { readTrayList } from '@/lib/domain/labels/tray-list';

export const LABELS_PATH = '/stores/labels';
export const TRAY_LABELS_PATH = '/germination/labels';

/**
 * What the address of a page of labels says of packets, bags and trays; what it says of printing is read by its own
 * schema. The PDF is asked for with the same address.
 */
export interface LabelsAddress {
  /** number of a request whose bags are labelled; '' when it is about packets */
  request: string;
  /** chosen: what the address lists, and what was ticked last */
  packets: string[];
  /** numbers of the tests whose dishes are labelled */
  trays: string[];
  q: string;
  store: string;
  lots: string[];
  page: number;
  /** the page of the preview, from 1 */
  sheet: number;
  /** packets were ticked, or all that were found are to be added: the address is to be put in order */
  adding: 'ticked' | 'all' | null;
}

/** Longest search, store or lot list that is looked at. */
const MOST_LETTERS = 400;

export function readLabelsAddress(address: Address): LabelsAddress {
  const text = (name: string) => {
    const value = address[name];
    return (Array.isArray(value) ? value.join(',') : (value ?? '')).trim();
  };
  const count = (name: string) => Math.max(1, Math.min(100_000, Math.floor(Number(text(name))) || 1));
  const ticked = text('add');
  return {
    request: text('request').slice(0, MOST_LETTERS),
    packets: readPacketList(`${text('packets')},${ticked}`),
    trays: readTrayList(text('trays')),
    q: text('q').slice(0, MOST_LETTERS),
    store: text('store').slice(0, MOST_LETTERS),
    lots: text('lots')
      .slice(0, MOST_LETTERS * 10)
      .split(/\s*[,;]\s*/)
      .filter(Boolean),
    page: count('page'),
    sheet: count('sheet'),
    adding: text('all') ? 'all' : ticked ? 'ticked' : null,
  };
}

const RUN_FIELDS = ['format', 'start', 'copies', 'shiftX', 'shiftY', 'code'];

/** A page of labels with some of its address changed. */
export function labelsHref(
  address: Address,
  change: {
    packets?: readonly string[];
    trays?: readonly string[];
    q?: string;
    store?: string;
    lots?: readonly string[];
    page?: number;
    sheet?: number;
  },
  path: string = LABELS_PATH,
): string {
  const read = readLabelsAddress(address);
  const next = { ...read, page: 1, sheet: 1, ...change };
  const parameters = new URLSearchParams();
  const set = (name: string, value: string | number | undefined) => {
    if (value !== undefined && value !== '' && value !== 1) parameters.set(name, String(value));
  };
  set('request', next.request);
  set('packets', writePacketList(next.packets));
  set('trays', next.trays.join(','));
  set('q', next.q);
  set('store', next.store);
  set('lots', next.lots.join(','));
  set('page', next.page);
  set('sheet', next.sheet);
  for (const name of RUN_FIELDS) {
    const value = address[name];
    set(name, Array.isArray(value) ? value[0] : value);
  }
  const written = parameters.toString();
  return written === '' ? path : `${path}?${written}`;
}
