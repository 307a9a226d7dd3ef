import type Database from 'better-sqlite3';
import { judgeLots } from '@/lib/server/judging/judge-lots';

const stored = (database: Database.Database) => ({
  lots: database.prepare(`SELECT * FROM "LotJudgement" ORDER BY "lotId"`).all(),
  accessions: database.prepare(`SELECT * FROM "AccessionJudgement" ORDER BY "accessionId"`).all(),
});

/** Lots whose judgement is marked as no longer holding, or missing. */
export const staleLots = (database: Database.Database, today: string): string[] =>
  database
    .prepare<[string], string>(
      `SELECT l."id" FROM "Lot" l LEFT JOIN "LotJudgement" j ON j."lotId" = l."id"
       WHERE j."lotId" IS NULL OR j."judgedOn" <> ?`,
    )
    .pluck()
    .all(today);

/**
 * Judges what is marked as stale, as the server does when it starts, and compares what is stored then with judging
 * everything from scratch: what was stored may not have been wrong without being marked.
 *
 * @returns both, to be expected equal
 */
export async function judgementsFromScratch(database: Database.Database, today: string) {
  const stale = staleLots(database, today);
  if (stale.length > 0) await judgeLots(database, stale, today);
  const kept = stored(database);
  await judgeLots(database, 'all', today);
  return { kept, fresh: stored(database), stale: stale.length };
}
