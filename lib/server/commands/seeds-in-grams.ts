import type { Prisma } from '@/generated/prisma/client';
import { SEEDS_PER_THOUSAND, seedsFromWeight } from '@/lib/domain/stock/seed-count';
import { fieldError } from './field-error';

interface WeighedPacket {
  lot: { id: string; thousandSeedWeightG: number | null };
}

/**
 * Grams as seeds, by the lot's thousand-seed weight, or else by what went into a packet of it weighed and counted.
 *
 * @throws AppError beside `amount` where nothing turns grams into seeds, or they are less than one seed
 */
export async function seedsInGrams(
  tx: Prisma.TransactionClient,
  packet: WeighedPacket,
  grams: number,
): Promise<number> {
  const thousandSeedWeightG = packet.lot.thousandSeedWeightG ?? (await weightOfDeposit(tx, packet.lot.id));
  if (thousandSeedWeightG === null) {
    throw fieldError({
      amount: 'This lot has no thousand-seed weight, so grams cannot be turned into seeds: count them.',
    });
  }
  const seeds = seedsFromWeight({ weightG: grams, thousandSeedWeightG });
  if (seeds < 1) throw fieldError({ amount: 'This is less than one seed weighs.' });
  return seeds;
}

async function weightOfDeposit(tx: Prisma.TransactionClient, lotId: string): Promise<number | null> {
  const deposit = await tx.movement.findFirst({
    where: { packet: { lotId }, reason: 'deposit', grams: { gt: 0 }, seeds: { gt: 0 } },
    orderBy: { id: 'asc' },
    select: { seeds: true, grams: true },
  });
  return deposit?.grams ? (deposit.grams * SEEDS_PER_THOUSAND) / deposit.seeds : null;
}
