import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { RegrowAction } from '@/lib/schemas/regrow-decision';
import { reader } from '../database/connections';

export interface RegrowFilter {
  cropId?: string;
  /** only what should be sown in this season or has its last safe season by then */
  season?: number;
  action?: RegrowAction;
  search?: string;
  page: number;
  pageSize: number;
}

export interface RegrowRow {
  accessionId: string;
  accessionNumber: string;
  accessionName: string;
  cropName: string;
  action: RegrowAction;
  season: number | null;
  sentence: string;
  viabilityMedian: number | null;
  viabilityLower: number | null;
  viabilityUpper: number | null;
  chanceBelow: number | null;
  seedsLeft: number;
  seedsNeeded: number | null;
  plantsNeeded: number | null;
  lastSafeSeason: number | null;
  rescue: boolean;
  keyLotNumber: string | null;
  lots: RegrowLot[];
  decision: Decision | null;
}

export interface RegrowLot {
  lotNumber: string;
  harvestedOn: string;
  viabilityMedian: number | null;
  chanceBelow: number | null;
  seedsLeft: number;
  action: RegrowAction;
  storeName: string | null;
}

export interface Decision {
  id: string;
  season: number;
  action: RegrowAction;
  reason: string;
  byName: string;
  decidedAt: Date;
}

/** Every accession with its lots, most urgent first. Four queries however long the page. */
export async function findRegrow(filter: RegrowFilter): Promise<{ rows: RegrowRow[]; total: number }> {
  const where = conditions(filter);
  const [judgements, total] = await Promise.all([
    reader().accessionJudgement.findMany({
      where,
      orderBy: [{ urgency: 'desc' }, { accessionId: 'asc' }],
      skip: (filter.page - 1) * filter.pageSize,
      take: filter.pageSize,
    }),
    reader().accessionJudgement.count({ where }),
  ]);
  const accessionIds = judgements.map((row) => row.accessionId);
  const [lots, decisions] = await Promise.all([lotsOf(accessionIds), latestDecisions(accessionIds)]);
  const rows = judgements.map(({ judgedOn: _, searchText: __, urgency: ___, keyLotId: ____, lots: _____, ...row }) => ({
    ...row,
    action: row.action as RegrowAction,
    lots: lots.get(row.accessionId) ?? [],
    decision: decisions.get(row.accessionId) ?? null,
  }));
  return { rows, total };
}

function conditions({ cropId, season, action, search }: RegrowFilter): Prisma.AccessionJudgementWhereInput {
  const words = (search ?? '').toLowerCase().split(/\s+/).filter(Boolean);
  return {
    cropId,
    action,
    AND: [
      ...words.map((word) => ({ searchText: { contains: word } })),
      ...(season ? [{ OR: [{ season: { lte: season } }, { lastSafeSeason: { lte: season } }, { rescue: true }] }] : []),
    ],
  };
}

async function lotsOf(accessionIds: string[]): Promise<Map<string, RegrowLot[]>> {
  const lots = await reader().lotJudgement.findMany({
    where: { accessionId: { in: accessionIds } },
    orderBy: { harvestedOn: 'desc' },
    select: {
      accessionId: true,
      lotNumber: true,
      harvestedOn: true,
      viabilityMedian: true,
      chanceBelow: true,
      seedsLeft: true,
      action: true,
      storeName: true,
    },
  });
  const byAccession = new Map<string, RegrowLot[]>();
  for (const { accessionId, ...lot } of lots) {
    const list = byAccession.get(accessionId) ?? [];
    list.push({ ...lot, action: lot.action as RegrowAction });
    byAccession.set(accessionId, list);
  }
  return byAccession;
}

async function latestDecisions(accessionIds: string[]): Promise<Map<string, Decision>> {
  const decisions = await reader().regrowDecision.findMany({
    where: { accessionId: { in: accessionIds } },
    orderBy: [{ decidedAt: 'asc' }, { id: 'asc' }],
    select: { id: true, accessionId: true, season: true, action: true, reason: true, byName: true, decidedAt: true },
  });
  return new Map(
    decisions.map(({ accessionId, ...decision }) => [
      accessionId,
      { ...decision, action: decision.action as RegrowAction },
    ]),
  );
}

/** All decisions on one accession, latest first. */
export async function findDecisions(accessionId: string): Promise<(Decision & { lotId: string | null })[]> {
  const decisions = await reader().regrowDecision.findMany({
    where: { accessionId },
    orderBy: [{ decidedAt: 'desc' }, { id: 'desc' }],
    select: { id: true, season: true, action: true, reason: true, byName: true, decidedAt: true, lotId: true },
  });
  return decisions.map((decision) => ({ ...decision, action: decision.action as RegrowAction }));
}

/** Crops that have accessions, for the filter. */
export async function findCropsInUse(): Promise<{ id: string; name: string }[]> {
  return reader().crop.findMany({
    where: { accessions: { some: {} } },
    orderBy: { name: 'asc' },
    select: { id: true, name: true },
  });
}
