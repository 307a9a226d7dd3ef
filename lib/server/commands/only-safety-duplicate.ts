import type { Prisma } from '@/generated/prisma/client';

/**
 * Whether a packet is the last safety duplicate of its lot that holds seed: without it the lot has none.
 *
 * @param packetId  any packet
 */
export async function isOnlySafetyDuplicate(tx: Prisma.TransactionClient, packetId: string): Promise<boolean> {
  const rows = await tx.$queryRaw<{ id: string }[]>`
    SELECT p."id" FROM "Packet" p
    WHERE p."lotId" = (SELECT "lotId" FROM "Packet" WHERE "id" = ${packetId}) AND p."role" = 'safety-duplicate'
      AND (SELECT SUM(m."seeds") FROM "Movement" m WHERE m."packetId" = p."id") > 0`;
  return rows.length === 1 && rows[0]?.id === packetId;
}
