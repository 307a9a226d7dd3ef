import 'server-only';
import { addDays } from '@/lib/domain/calendar/calendar-date';
import { reader } from '../database/connections';
import { findAllSeries, type TestSeries } from './test-series';

/** After so many days seed has aged since its first groups: it is planned anew. Our own choice. */
const WAITS_FOR_DAYS = 90;

/**
 * Tests in groups that are not clear yet and stand still: no group is being counted, and the plan asks for more seed.
 * Neither those whose groups were all given up, nor those of a lot that has a later test: they are planned anew.
 *
 * @param today  'YYYY-MM-DD' at the bank
 * @returns those that have waited longest first
 * Checked in tests/server/queries/groups-to-set.test.ts
 */
export async function findGroupsToSet(today: string): Promise<TestSeries[]> {
  const waiting = await reader().$queryRaw<{ seriesId: string }[]>`
    WITH series AS (
      SELECT "seriesId", "lotId", MAX("setOn") AS "lastSetOn" FROM "Tray"
      WHERE "sequentialPlan" IS NOT NULL GROUP BY "seriesId"
      HAVING MAX("setOn") >= ${addDays(today, -WAITS_FOR_DAYS)})
    SELECT series."seriesId" FROM series
    WHERE NOT EXISTS (SELECT 1 FROM "Tray" WHERE "lotId" = series."lotId" AND "status" = 'open')
      AND NOT EXISTS (
        SELECT 1 FROM "GerminationTest" test LEFT JOIN "Tray" tray ON tray."id" = test."trayId"
        WHERE test."lotId" = series."lotId" AND test."setOn" >= series."lastSetOn"
          AND tray."seriesId" IS NOT series."seriesId" AND test."correctsId" IS NULL)
    ORDER BY series."lastSetOn", series."seriesId"`;
  const all = await findAllSeries(waiting.map(({ seriesId }) => seriesId));
  return all.filter(({ soFar }) => soFar.seedsTested > 0 && soFar.nextSeeds !== null);
}
