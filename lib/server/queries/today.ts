import 'server-only';
import type { RegrowAction } from '@/lib/schemas/regrow-decision';
import { reader } from '../database/connections';
import { today } from '../today';
import { DECISION_WAITS } from './decisions-waiting';
import { NOT_UNDER_TEST } from './under-test';

const ROWS_SHOWN = 8;

export interface TestDueRow {
  lotNumber: string;
  accessionName: string;
  cropName: string;
  testDueOn: string;
  testDueReason: string;
  storeName: string | null;
}

export interface FallingRow {
  lotNumber: string;
  accessionName: string;
  cropName: string;
  chanceBelow: number;
  viabilityMedian: number | null;
  sentence: string;
}

export interface WaitingRow {
  accessionNumber: string;
  accessionName: string;
  cropName: string;
  season: number;
  sentence: string;
  rescue: boolean;
}

/** Lots whose next germination test is due, longest overdue first; those whose test is under way are not. */
export async function findTestsDue(limit = ROWS_SHOWN): Promise<{ rows: TestDueRow[]; total: number }> {
  const where = { testDueOn: { lte: today() }, ...NOT_UNDER_TEST };
  const [rows, total] = await Promise.all([
    reader().lotJudgement.findMany({
      where,
      orderBy: [{ testDueOn: 'asc' }, { lotNumber: 'asc' }],
      take: limit,
      select: {
        lotNumber: true,
        accessionName: true,
        cropName: true,
        testDueOn: true,
        testDueReason: true,
        storeName: true,
      },
    }),
    reader().lotJudgement.count({ where }),
  ]);
  return {
    rows: rows.map((row) => ({ ...row, testDueOn: row.testDueOn ?? '', testDueReason: row.testDueReason ?? '' })),
    total,
  };
}

/**
 * Lots falling through their line: the chance of being below is between 10 and 90 %. Those beyond that have fallen; their
 * accessions wait for a decision, or live on in another lot.
 */
export async function findFalling(limit = ROWS_SHOWN): Promise<{ rows: FallingRow[]; total: number }> {
  const where = { chanceBelow: { gte: 0.1, lt: 0.9 }, seedsLeft: { gt: 0 } };
  const [rows, total] = await Promise.all([
    reader().lotJudgement.findMany({
      where,
      orderBy: [{ chanceBelow: 'desc' }, { lotNumber: 'asc' }],
      take: limit,
      select: {
        lotNumber: true,
        accessionName: true,
        cropName: true,
        chanceBelow: true,
        viabilityMedian: true,
        sentence: true,
      },
    }),
    reader().lotJudgement.count({ where }),
  ]);
  return { rows: rows.map((row) => ({ ...row, chanceBelow: row.chanceBelow ?? 0 })), total };
}

/** Accessions that should be regrown and on which nobody has decided for that season yet. */
export async function findDecisionsWaiting(limit = ROWS_SHOWN): Promise<{ rows: WaitingRow[]; total: number }> {
  const waiting = await reader().$queryRaw<
    (Omit<WaitingRow, 'rescue' | 'season'> & { rescue: bigint; season: bigint; total: bigint })[]
  >`
    SELECT j."accessionNumber", j."accessionName", j."cropName", j."season", j."sentence", j."rescue",
      COUNT(*) OVER () AS "total"
    FROM "AccessionJudgement" j
    WHERE ${DECISION_WAITS}
    ORDER BY j."urgency" DESC, j."accessionId" LIMIT ${limit}`;
  return {
    rows: waiting.map(({ total: _, ...row }) => ({ ...row, season: Number(row.season), rescue: Boolean(row.rescue) })),
    total: Number(waiting[0]?.total ?? 0),
  };
}

/** Decisions to regrow in a season that is still to come or under way: what was promised. */
export async function findPromised(
  season: number,
): Promise<{ accessionNumber: string; accessionName: string; season: number; action: RegrowAction }[]> {
  const decisions = await reader().regrowDecision.findMany({
    where: { season: { gte: season } },
    orderBy: [{ decidedAt: 'asc' }, { id: 'asc' }],
    select: { season: true, action: true, accession: { select: { number: true, name: true } } },
  });
  const latest = new Map(decisions.map((decision) => [decision.accession.number, decision]));
  return [...latest.values()]
    .filter((decision) => decision.action === 'regrow')
    .map(({ season: when, action, accession }) => ({
      accessionNumber: accession.number,
      accessionName: accession.name,
      season: when,
      action: action as RegrowAction,
    }));
}
