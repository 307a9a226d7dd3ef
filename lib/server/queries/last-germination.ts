import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import { reader } from '../database/connections';

/** What a label, a pack list or a search says of a lot's germination: its last test that stands. */
export interface LastGermination {
  finishedOn: string;
  seeds: number;
  normal: number;
  /** normal, hard and fresh */
  alive: number;
}

/**
 * The last test of each lot that was not corrected by a later entry: one statement.
 *
 * @param lotIds  which lots
 * @returns by lot id; lots that nobody tested are left out
 * Checked in tests/server/queries/lots-to-share.test.ts
 */
export async function lastGerminations(lotIds: readonly string[]): Promise<Map<string, LastGermination>> {
  if (lotIds.length === 0) return new Map();
  const rows = await reader().$queryRaw<
    { lotId: string; finishedOn: string; seeds: bigint; normal: bigint; alive: bigint }[]
  >`
    SELECT t."lotId", t."finishedOn", SUM(r."seeds") AS "seeds", SUM(r."normal") AS "normal",
      SUM(r."normal" + r."hard" + r."fresh") AS "alive"
    FROM "GerminationTest" t JOIN "Replicate" r ON r."testId" = t."id"
    WHERE t."lotId" IN (${Prisma.join([...lotIds])})
      AND NOT EXISTS (SELECT 1 FROM "GerminationTest" c WHERE c."correctsId" = t."id")
    GROUP BY t."id" ORDER BY t."finishedOn", t."id"`;
  // The last one of a lot replaces those before it.
  return new Map(
    rows.map(({ lotId, finishedOn, seeds, normal, alive }) => [
      lotId,
      { finishedOn, seeds: Number(seeds), normal: Number(normal), alive: Number(alive) },
    ]),
  );
}
