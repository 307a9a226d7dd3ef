import type { Prisma } from '@/generated/prisma/client';
import { fieldError } from './field-error';

/**
 * The packet that a test's seed came from.
 *
 * @throws AppError beside `packetId` when it is not of this lot
 */
export async function requirePacketOfLot(
  tx: Prisma.TransactionClient,
  packetId: string,
  lot: { id: string; number: string },
): Promise<{ id: string; number: string }> {
  const packet = await tx.packet.findUnique({
    where: { id: packetId },
    select: { id: true, number: true, lotId: true },
  });
  if (packet?.lotId !== lot.id) throw fieldError({ packetId: `Choose a packet of lot ${lot.number}.` });
  return { id: packet.id, number: packet.number };
}
