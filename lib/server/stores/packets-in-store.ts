import type { Prisma } from '@/generated/prisma/client';

export interface PacketsInside {
  packets: number;
  /** moisture of the moistest whose moisture is known, percent of fresh weight */
  moistestPercent: number | null;
}

/** Packets with seed that lie now in a store or in those inside it. */
export async function packetsInside(
  tx: Pick<Prisma.TransactionClient, '$queryRaw'>,
  storeId: string,
): Promise<PacketsInside> {
  const [row] = await tx.$queryRaw<{ packets: bigint | number; moistestPercent: number | null }[]>`
    WITH RECURSIVE inside(id) AS (
      SELECT ${storeId} UNION SELECT s."id" FROM "Store" s JOIN inside ON s."parentId" = inside.id
    ),
    now AS (
      SELECT pl."packetId", pl."storeId", pl."moisturePercent",
        ROW_NUMBER() OVER (PARTITION BY pl."packetId" ORDER BY pl."from" DESC, pl."id" DESC) AS latest
      FROM "Placement" pl
      WHERE pl."packetId" IN (SELECT "packetId" FROM "Placement" WHERE "storeId" IN (SELECT id FROM inside))
    )
    SELECT COUNT(*) AS packets, MAX(now."moisturePercent") AS "moistestPercent" FROM now
    WHERE now.latest = 1 AND now."storeId" IN (SELECT id FROM inside)
      AND (SELECT SUM(m."seeds") FROM "Movement" m WHERE m."packetId" = now."packetId") > 0`;
  return { packets: Number(row?.packets ?? 0), moistestPercent: row?.moistestPercent ?? null };
}
