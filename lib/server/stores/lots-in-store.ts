import type { Prisma } from '@/generated/prisma/client';

/** Lots that lie or have lain in this store or in one that has ever stood in it: what is inside may take its climate. */
export async function lotsEverIn(tx: Prisma.TransactionClient, storeId: string): Promise<string[]> {
  const rows = await tx.$queryRaw<{ lotId: string }[]>`
    WITH RECURSIVE inside(id) AS (
      SELECT ${storeId} UNION SELECT ph."storeId" FROM "StorePhase" ph JOIN inside ON ph."parentId" = inside.id
    )
    SELECT DISTINCT p."lotId" FROM "Placement" pl JOIN "Packet" p ON p."id" = pl."packetId"
    WHERE pl."storeId" IN (SELECT id FROM inside)`;
  return rows.map((row) => row.lotId);
}
