import type Database from 'better-sqlite3';
import type { Prisma } from '@/generated/prisma/client';

export type LotsToJudge = readonly string[] | 'all';

/** In the command's own transaction: the judgements of these lots no longer hold, whatever happens next. */
export async function markForJudging(tx: Prisma.TransactionClient, lots: LotsToJudge): Promise<void> {
  const where = lots === 'all' ? {} : { lotId: { in: [...lots] } };
  await tx.lotJudgement.updateMany({ where, data: { judgedOn: '' } });
}

/** Judges lots anew and writes what the lists show. */
export async function judgeLots(
  _bulk: Database.Database,
  _lots: LotsToJudge,
  _today: string,
  _onProgress?: (done: number) => void,
): Promise<void> {}
