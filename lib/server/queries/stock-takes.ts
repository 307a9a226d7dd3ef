import 'server-only';
import { reader } from '../database/connections';
import { namesOf } from './names-of';

export type StockTakeStatus = 'open' | 'closed' | 'given-up';

export interface StockTakeHead {
  id: string;
  number: string;
  storeId: string;
  storeName: string;
  startedOn: string;
  closedOn: string | null;
  status: StockTakeStatus;
  notes: string | null;
  byId: string;
  byName: string | null;
  /** packets written down so far */
  lines: number;
}

const HEAD = {
  id: true,
  number: true,
  storeId: true,
  startedOn: true,
  closedOn: true,
  status: true,
  notes: true,
  byId: true,
  store: { select: { name: true } },
  _count: { select: { lines: true } },
} as const;

/** The latest ones on the page of all stock-takes: a bank goes through a store a few times a year. */
const MOST_SHOWN = 200;

/** Stock-takes, open ones first, then the latest. */
export async function findStockTakes(): Promise<StockTakeHead[]> {
  const found = await reader().stockTake.findMany({ orderBy: { id: 'desc' }, take: MOST_SHOWN, select: HEAD });
  const names = await namesOf(found.map(({ byId }) => byId));
  return found
    .map((take) => shape(take, names))
    .sort((a, b) => Number(b.status === 'open') - Number(a.status === 'open'));
}

/** Null when there is no such stock-take. */
export async function getStockTake(number: string): Promise<StockTakeHead | null> {
  const take = await reader().stockTake.findUnique({ where: { number }, select: HEAD });
  return take && shape(take, await namesOf([take.byId]));
}

type Selected = Omit<StockTakeHead, 'storeName' | 'byName' | 'lines' | 'status'> & {
  status: string;
  store: { name: string };
  _count: { lines: number };
};

function shape({ store, _count, status, ...take }: Selected, names: Map<string, string>): StockTakeHead {
  return {
    ...take,
    status: status as StockTakeStatus,
    storeName: store.name,
    byName: names.get(take.byId) ?? null,
    lines: _count.lines,
  };
}
