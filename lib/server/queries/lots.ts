import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import { type LotListQuery, type LotSort, readSort } from '@/lib/schemas/list-query';
import { reader } from '../database/connections';
import { LOT_FACTS } from '../lot-facts';
import { judgementConditions, type ListPage, orderBy, PAGE_SIZE, readListPage, where } from './list-page';

/** A lot as the list shows it: read from its judgement, which holds everything a list sorts and filters by. */
export interface LotListRow {
  lotNumber: string;
  accessionNumber: string;
  accessionName: string;
  cropName: string;
  harvestedOn: string;
  seedsLeft: number;
  storeName: string | null;
  viabilityMedian: number | null;
  viabilityLower: number | null;
  viabilityUpper: number | null;
  testDueOn: string | null;
  action: 'regrow' | 'test-first' | 'leave';
  sentence: string;
  noForecastBecause: string | null;
}

const COLUMNS: Record<LotSort, readonly string[]> = {
  lot: ['lotNumber'],
  accession: ['accessionName', 'lotNumber'],
  crop: ['cropName', 'accessionName'],
  harvest: ['harvestedOn'],
  store: ['storeName', 'lotNumber'],
  alive: ['viabilityMedian'],
  seeds: ['seedsLeft'],
  due: ['testDueOn'],
  urgency: ['urgency'],
};

/** The statement behind the list, apart so that a test can look at its plan. */
export function lotListSql(query: LotListQuery, offset: number): Prisma.Sql {
  const { key, descending } = readSort<LotSort>(query.sort);
  return Prisma.sql`SELECT "lotNumber", "accessionNumber", "accessionName", "cropName", "harvestedOn", "seedsLeft",
      "storeName", "viabilityMedian", "viabilityLower", "viabilityUpper", "testDueOn", "action", "sentence",
      "noForecastBecause"
    FROM "LotJudgement" ${where(conditions(query))} ${orderBy(COLUMNS[key], descending)}
    LIMIT ${PAGE_SIZE} OFFSET ${offset}`;
}

function conditions(query: LotListQuery): Prisma.Sql[] {
  const all = judgementConditions('LotJudgement', query);
  if (query.store) all.push(Prisma.sql`"storeId" = ${query.store}`);
  return all;
}

/** One page of lots. */
export const findLots = (query: LotListQuery): Promise<ListPage<LotListRow>> =>
  readListPage('LotJudgement', conditions(query), query.page, (offset) => lotListSql(query, offset));

/** What the lot's edit form shows; null when there is no such lot. */
export async function getLotForEdit(number: string) {
  return reader().lot.findUnique({
    where: { number },
    select: {
      id: true,
      number: true,
      ...LOT_FACTS,
      version: true,
      accession: { select: { number: true, name: true, crop: { select: { name: true } } } },
    },
  });
}
