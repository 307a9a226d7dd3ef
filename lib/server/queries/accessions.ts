import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import { type AccessionListQuery, type AccessionSort, readSort } from '@/lib/schemas/list-query';
import { reader } from '../database/connections';
import { judgementConditions, type ListPage, matching, orderBy, PAGE_SIZE, readListPage, where } from './list-page';

/** An accession as the list shows it: read from its judgement. */
export interface AccessionListRow {
  accessionNumber: string;
  accessionName: string;
  cropName: string;
  lots: number;
  seedsLeft: number;
  viabilityMedian: number | null;
  viabilityLower: number | null;
  viabilityUpper: number | null;
  action: 'regrow' | 'test-first' | 'leave';
  season: number | null;
  sentence: string;
}

const COLUMNS: Record<AccessionSort, readonly string[]> = {
  number: ['accessionNumber'],
  accession: ['accessionName'],
  crop: ['cropName', 'accessionName'],
  lots: ['lots'],
  alive: ['viabilityMedian'],
  seeds: ['seedsLeft'],
  urgency: ['urgency'],
};

/** The statement behind the list, apart so that a test can look at its plan. */
export function accessionListSql(query: AccessionListQuery, offset: number): Prisma.Sql {
  const { key, descending } = readSort<AccessionSort>(query.sort);
  return Prisma.sql`SELECT "accessionNumber", "accessionName", "cropName", "lots", "seedsLeft", "viabilityMedian",
      "viabilityLower", "viabilityUpper", "action", "season", "sentence"
    FROM "AccessionJudgement" ${where(conditions(query))} ${orderBy(COLUMNS[key], descending)}
    LIMIT ${PAGE_SIZE} OFFSET ${offset}`;
}

const conditions = (query: AccessionListQuery) => judgementConditions('AccessionJudgement', query);

/** One page of accessions. */
export const findAccessions = (query: AccessionListQuery): Promise<ListPage<AccessionListRow>> =>
  readListPage('AccessionJudgement', conditions(query), query.page, (offset) => accessionListSql(query, offset));

/** An accession with its lots, their judgements and the decisions taken; null when there is no such number. */
export async function getAccession(number: string) {
  return reader().accession.findUnique({
    where: { number },
    select: {
      id: true,
      number: true,
      name: true,
      donor: true,
      acquiredOn: true,
      origin: true,
      notes: true,
      sharing: true,
      sharingTerms: true,
      version: true,
      crop: { select: { id: true, name: true, scientificName: true } },
      judgement: { select: { sentence: true, action: true, season: true, seedsLeft: true, judgedOn: true } },
      decisions: {
        orderBy: [{ decidedAt: 'desc' }, { id: 'desc' }],
        take: 50,
        select: { id: true, season: true, action: true, reason: true, byName: true, decidedAt: true },
      },
      lots: {
        orderBy: { harvestedOn: 'desc' },
        select: {
          id: true,
          number: true,
          harvestedOn: true,
          generation: true,
          isolation: true,
          treatment: true,
          judgement: {
            select: {
              seedsLeft: true,
              storeName: true,
              viabilityMedian: true,
              viabilityLower: true,
              viabilityUpper: true,
              noForecastBecause: true,
              action: true,
              sentence: true,
            },
          },
        },
      },
    },
  });
}

export interface AccessionChoice {
  number: string;
  name: string;
  cropName: string;
}

/** Accessions to offer while somebody types: number or name beginning with it first, then containing it. */
export async function suggestAccessions(typed: string, limit = 20): Promise<AccessionChoice[]> {
  const words = matching('AccessionJudgement', typed);
  if (words.length === 0) return [];
  const beginning = `${typed
    .trim()
    .toLowerCase()
    .replace(/[\\%_]/g, '\\$&')}%`;
  return reader().$queryRaw<AccessionChoice[]>`
    SELECT "accessionNumber" AS "number", "accessionName" AS "name", "cropName" FROM "AccessionJudgement"
    ${where(words)}
    ORDER BY "accessionNumber" LIKE ${beginning} ESCAPE '\\' OR "accessionName" LIKE ${beginning} ESCAPE '\\' DESC,
      "accessionName", "accessionNumber"
    LIMIT ${limit}`;
}
