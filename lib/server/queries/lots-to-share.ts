import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import { REGROWINGS_KEPT, SEEDS_KEPT_FOR_TESTS, type SeedToSpare, seedToSpare } from '@/lib/domain/stock/seed-to-spare';
import type { SharingTermsKey } from '@/lib/domain/stock/sharing-terms';
import type { LotsToShareQuery } from '@/lib/schemas/sharing-query';
import { connections, reader } from '../database/connections';
import { regrowingNeeds } from '../judging/regrowing-needs';
import { today } from '../today';
import { type LastGermination, lastGerminations } from './last-germination';
import { type ListPage, matching, where } from './list-page';
import { ownSeed } from './request-lines';

export const LOTS_TO_SHARE_PER_PAGE = 20;

/** A lot as somebody sees it who looks for seed to give away. */
export interface LotToShare {
  lotId: string;
  lotNumber: string;
  accessionNumber: string;
  accessionName: string;
  cropName: string;
  harvestedOn: string;
  viabilityMedian: number | null;
  viabilityLower: number | null;
  viabilityUpper: number | null;
  sharing: SharingTermsKey;
  sharingTerms: string | null;
  treatment: string | null;
  /** more likely than not it comes up worse than the bank's line */
  belowTheLine: boolean;
  /** seeds in active packets */
  active: number;
  toSpare: SeedToSpare;
  germination: LastGermination | null;
  /** seeds of it on other requests that are still open */
  promised: number;
  /** on this request already */
  onList: boolean;
}

interface JudgedLot {
  lotId: string;
  lotNumber: string;
  accessionId: string;
  accessionNumber: string;
  accessionName: string;
  cropName: string;
  harvestedOn: string;
  viabilityMedian: number | null;
  viabilityLower: number | null;
  viabilityUpper: number | null;
  threshold: number | null;
}

/**
 * Lots in which there can be seed to give away, by what their judgements hold: seed in all packets, and the need of next
 * season for every regrowing. Base stock, duplicates and the higher need of later seasons are looked at on the page
 * alone, so a few of these lots turn out to have nothing to spare, and their rows say so.
 */
function conditions({ q, show }: LotsToShareQuery): Prisma.Sql[] {
  const all = matching('LotJudgement', q);
  if (show === 'all') return all;
  return [
    ...all,
    Prisma.sql`"viabilityMedian" IS NOT NULL AND "seedsNeeded" IS NOT NULL
      AND "seedsLeft" > ${REGROWINGS_KEPT} * "seedsNeeded" + ${SEEDS_KEPT_FOR_TESTS}`,
    Prisma.sql`"accessionId" NOT IN (SELECT "id" FROM "Accession" WHERE "sharing" = 'not')`,
  ];
}

/** The statement behind the page, apart so that a test can look at its plan. */
export function lotsToShareSql(query: LotsToShareQuery, offset: number): Prisma.Sql {
  return Prisma.sql`SELECT "lotId", "lotNumber", "accessionId", "accessionNumber", "accessionName", "cropName",
      "harvestedOn", "viabilityMedian", "viabilityLower", "viabilityUpper", "threshold"
    FROM "LotJudgement" ${where(conditions(query))} ORDER BY "accessionName" ASC, "lotNumber" ASC, rowid
    LIMIT ${LOTS_TO_SHARE_PER_PAGE} OFFSET ${offset}`;
}

/**
 * One page of lots to choose from for a request: some twelve statements, however many lots there are.
 *
 * @param requestId  the request that is being filled
 * Checked in tests/server/queries/lots-to-share.test.ts
 */
export async function findLotsToShare(query: LotsToShareQuery, requestId: string): Promise<ListPage<LotToShare>> {
  const [counted] = await reader().$queryRaw<{ total: bigint }[]>`
    SELECT COUNT(*) AS total FROM "LotJudgement" ${where(conditions(query))}`;
  const total = Number(counted?.total ?? 0);
  const pages = Math.max(1, Math.ceil(total / LOTS_TO_SHARE_PER_PAGE));
  const page = Math.min(query.page, pages);
  const judged = await reader().$queryRaw<JudgedLot[]>(lotsToShareSql(query, (page - 1) * LOTS_TO_SHARE_PER_PAGE));
  const ids = judged.map((lot) => lot.lotId);
  const [lots, held, wanted, germinations] = await Promise.all([
    reader().lot.findMany({
      where: { id: { in: ids } },
      select: { id: true, treatment: true, accession: { select: { sharing: true, sharingTerms: true } } },
    }),
    seedsByPacket(ids),
    reader().sharingLine.findMany({
      where: { lotId: { in: ids }, request: { status: 'open' } },
      select: { lotId: true, requestId: true, seeds: true },
    }),
    lastGerminations(ids),
  ]);
  const needs = regrowingNeeds(connections().rows, ids, today());
  const lotOf = new Map(lots.map((lot) => [lot.id, lot]));
  const rows = judged.map(({ accessionId: _accession, threshold, ...lot }): LotToShare => {
    const stored = lotOf.get(lot.lotId);
    const own = ownSeed(held.filter((packet) => packet.lotId === lot.lotId));
    const lines = wanted.filter((line) => line.lotId === lot.lotId);
    return {
      ...lot,
      sharing: (stored?.accession.sharing ?? 'not') as SharingTermsKey,
      sharingTerms: stored?.accession.sharingTerms ?? null,
      treatment: stored?.treatment ?? null,
      belowTheLine: lot.viabilityMedian !== null && threshold !== null && lot.viabilityMedian < threshold,
      active: own.active,
      toSpare: seedToSpare({ ...own, forRegrowing: needs.get(lot.lotId) ?? null }),
      germination: germinations.get(lot.lotId) ?? null,
      promised: lines.filter((line) => line.requestId !== requestId).reduce((sum, line) => sum + (line.seeds ?? 0), 0),
      onList: lines.some((line) => line.requestId === requestId),
    };
  });
  return { rows, total, page, pages };
}

async function seedsByPacket(lotIds: readonly string[]): Promise<{ lotId: string; role: string; seeds: number }[]> {
  if (lotIds.length === 0) return [];
  const rows = await reader().$queryRaw<{ lotId: string; role: string; seeds: bigint }[]>`
    SELECT p."lotId", p."role", SUM(m."seeds") AS "seeds" FROM "Packet" p JOIN "Movement" m ON m."packetId" = p."id"
    WHERE p."lotId" IN (${Prisma.join([...lotIds])}) GROUP BY p."id"`;
  return rows.map((row) => ({ ...row, seeds: Number(row.seeds) }));
}
