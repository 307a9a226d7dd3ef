import 'server-only';
import { takeBackReadingsSchema } from '@/lib/schemas/reading-import';
import { AppError, notFound } from '../app-error';
import type { Person } from '../auth/roles';
import { auditInBulk, inBulkTransaction, markForJudgingInBulk } from '../database/bulk-transaction';
import { connections, reader } from '../database/connections';
import { explainFailure } from '../database/explain-failure';
import { enqueueWrite } from '../database/write-queue';
import { judgeLots } from '../judging/judge-lots';
import { raiseClimateVersion } from '../readings/raise-climate-version';
import { giveWay } from '../readings/read-logger-file';
import { refreshReadingDays } from '../readings/refresh-reading-days';
import { lotsEverIn } from '../stores/lots-in-store';
import { today } from '../today';
import { type Command, invalidInput, requireRole } from './command';

interface TakenBack {
  storeId: string;
  readings: number;
}

interface ImportRow {
  storeId: string;
  storeName: string;
  name: string | null;
  status: string;
}

/** A stretch of time whose readings are marked at once: with a reading a minute, ninety thousand. */
const SECONDS_AT_A_TIME = 62 * 86_400;

/**
 * Takes back all readings that an import brought (a wrong store, a logger in a pocket): they stay in the database, marked,
 * and nothing is reckoned with them any more. The same file may be imported again afterwards.
 */
async function execute(person: Person | null, input: unknown): Promise<TakenBack> {
  const actor = requireRole(person, 'steward');
  const parsed = takeBackReadingsSchema.safeParse(input);
  if (!parsed.success) throw invalidInput(parsed.error);
  try {
    return await enqueueWrite(() => takeBack(actor, parsed.data.importId));
  } catch (error) {
    throw explainFailure(error) ?? error;
  }
}

export const takeBackReadings: Command<TakenBack> = Object.assign(execute, {
  commandName: 'take-back-readings',
  role: 'steward' as const,
});

async function takeBack(person: Person, importId: number): Promise<TakenBack> {
  const stored = connections()
    .rows.prepare<[number], ImportRow>(
      `SELECT i."storeId", s."name" AS "storeName", COALESCE(i."fileName", t."name") AS "name", i."status"
       FROM "ReadingImport" i JOIN "Store" s ON s."id" = i."storeId" LEFT JOIN "ReadingToken" t ON t."id" = i."tokenId"
       WHERE i."id" = ?`,
    )
    .get(importId);
  if (!stored) throw notFound('This import');
  const { storeId, storeName, name, status } = stored;
  if (status !== 'imported') {
    throw new AppError(
      'refused',
      status === 'taken-back' ? 'These readings have been taken back already.' : 'This file has not been imported.',
    );
  }
  let lots: string[] = [];
  const readings = await inBulkTransaction(async (bulk) => {
    lots = await lotsEverIn(reader(), storeId);
    const marked = await markTakenBack(bulk, storeId, importId);
    bulk.prepare(`UPDATE "ReadingImport" SET "status" = 'taken-back' WHERE "id" = ?`).run(importId);
    if (marked > 0) raiseClimateVersion(bulk, storeId);
    auditInBulk(bulk, person, 'take-back-readings', {
      entity: 'store',
      entityId: storeId,
      summary: `Took back ${marked} readings of store ${storeName} that came with ${name}`,
      after: { importId, readings: marked },
    });
    markForJudgingInBulk(bulk, lots);
    return marked;
  });
  if (lots.length > 0) await judgeLots(connections().bulk, lots, today());
  return { storeId, readings };
}

async function markTakenBack(
  bulk: ReturnType<typeof connections>['bulk'],
  storeId: string,
  importId: number,
): Promise<number> {
  const range = bulk
    .prepare<[string, number], { first: number | null; last: number | null }>(
      `SELECT MIN("atEpochSeconds") AS "first", MAX("atEpochSeconds") AS "last" FROM "Reading"
       WHERE "storeId" = ? AND "importId" = ? AND NOT "takenBack"`,
    )
    .get(storeId, importId);
  if (range?.first == null || range.last == null) return 0;
  const mark = bulk.prepare(
    `UPDATE "Reading" SET "takenBack" = 1
     WHERE "storeId" = ? AND "atEpochSeconds" >= ? AND "atEpochSeconds" < ? AND "importId" = ? AND NOT "takenBack"`,
  );
  let marked = 0;
  for (let from = range.first; from <= range.last; from += SECONDS_AT_A_TIME) {
    marked += mark.run(storeId, from, from + SECONDS_AT_A_TIME, importId).changes;
    await giveWay();
  }
  await refreshReadingDays(bulk, storeId, range.first, range.last, giveWay);
  return marked;
}
