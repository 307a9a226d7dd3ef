import type { Prisma } from '@/generated/prisma/client';
import type { CareLine } from '@/lib/domain/stock/packet-care';

/** What was done to a packet's container, in order, as lib/domain/stock/packet-care reads it. */
export async function careLines(
  tx: Pick<Prisma.TransactionClient, 'packetCare'>,
  packetId: string,
): Promise<CareLine[]> {
  const lines = await tx.packetCare.findMany({
    where: { packetId },
    orderBy: [{ on: 'asc' }, { id: 'asc' }],
    select: { on: true, what: true, desiccant: true, desiccantGrams: true, changeDueOn: true },
  });
  return lines as CareLine[];
}
