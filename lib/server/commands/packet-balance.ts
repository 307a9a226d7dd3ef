import type { Prisma } from '@/generated/prisma/client';

/** Seeds that a packet holds: the sum of its ledger. Read in the transaction that is to change it. */
export async function packetBalance(tx: Prisma.TransactionClient, packetId: string): Promise<number> {
  const sum = await tx.movement.aggregate({ where: { packetId }, _sum: { seeds: true } });
  return sum._sum.seeds ?? 0;
}
