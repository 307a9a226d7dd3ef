import type { Prisma } from '@/generated/prisma/client';
import { balanceUncertainty, type UncertainBalance } from '@/lib/domain/stock/balance-uncertainty';

/** What a packet holds and how far that may be off. Read in the transaction that is to change it. */
export async function uncertainBalance(
  tx: Prisma.TransactionClient,
  { id, lot }: { id: string; lot: { thousandSeedWeightG: number | null } },
): Promise<UncertainBalance> {
  const lines = await tx.movement.findMany({
    where: { packetId: id },
    orderBy: { id: 'asc' },
    select: { id: true, reason: true, seeds: true, grams: true, seedsSd: true, correctsId: true },
  });
  return balanceUncertainty(lines, { lotHasSeedWeight: lot.thousandSeedWeightG !== null });
}
