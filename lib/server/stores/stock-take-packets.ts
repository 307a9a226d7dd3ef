import type { Prisma } from '@/generated/prisma/client';

/** A packet that lies by its placement in the store of a stock-take, or in one inside it, and holds seed. */
export interface PacketThere {
  packetId: string;
  storeId: string;
  seeds: number;
}

/** Packets with seed that the ledger expects in a store and in what stands in it, at this moment. */
export async function packetsThere(
  tx: Pick<Prisma.TransactionClient, '$queryRaw'>,
  storeId: string,
): Promise<PacketThere[]> {
  const rows = await tx.$queryRaw<{ packetId: string; storeId: string; seeds: bigint | number }[]>`
    WITH RECURSIVE inside(id) AS (
      SELECT ${storeId} UNION SELECT s."id" FROM "Store" s JOIN inside ON s."parentId" = inside.id
    ),
    now AS (
      SELECT pl."packetId", pl."storeId",
        ROW_NUMBER() OVER (PARTITION BY pl."packetId" ORDER BY pl."from" DESC, pl."id" DESC) AS latest
      FROM "Placement" pl
      WHERE pl."packetId" IN (SELECT "packetId" FROM "Placement" WHERE "storeId" IN (SELECT id FROM inside))
    ),
    held AS (
      SELECT now."packetId", now."storeId",
        (SELECT SUM(m."seeds") FROM "Movement" m WHERE m."packetId" = now."packetId") AS seeds
      FROM now WHERE now.latest = 1 AND now."storeId" IN (SELECT id FROM inside)
    )
    SELECT * FROM held WHERE seeds > 0`;
  return rows.map((row) => ({ ...row, seeds: Number(row.seeds) }));
}
