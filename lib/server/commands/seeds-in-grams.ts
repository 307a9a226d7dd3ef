import type { Prisma } from '@/generated/prisma/client';
import { SEEDS_PER_THOUSAND, seedsFromWeight } from '@/lib/domain/stock/seed-count';
import {
  OWN_SEED_WEIGHT_ERROR,
  seedWeightPart,
  spreadOfAmount,
  USUAL_SEED_WEIGHT_ERROR,
} from '@/lib/domain/stock/spread-of-amount';
import { fieldError } from './field-error';

interface WeighedPacket {
  lot: { id: string; thousandSeedWeightG: number | null };
}

/** Seeds that a weight holds. */
export interface WeighedSeeds {
  seeds: number;
  /** how far they may be off: standard deviation, seeds */
  seedsSd: number;
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
): Promise<WeighedSeeds> {
  const seedWeight = await seedWeightOfLot(tx, packet.lot);
  if (seedWeight === null) {
    throw fieldError({
      amount: 'This lot has no thousand-seed weight, so grams cannot be turned into seeds: count them.',
    });
  }
  const seeds = seedsFromWeight({ weightG: grams, thousandSeedWeightG: seedWeight.thousandSeedWeightG });
  if (seeds < 1) throw fieldError({ amount: 'This is less than one seed weighs.' });
  return { seeds, seedsSd: spreadOfAmount({ seeds, weighedG: grams, seedWeightError: seedWeight.error }) };
}

/** What turns a lot's grams into seeds. */
export interface SeedWeight {
  thousandSeedWeightG: number;
  /** relative standard deviation */
  error: number;
}

/** @returns null when the lot has no thousand-seed weight and nothing of it was both weighed and counted */
export async function seedWeightOfLot(
  tx: Prisma.TransactionClient,
  lot: WeighedPacket['lot'],
): Promise<SeedWeight | null> {
  if (lot.thousandSeedWeightG !== null) {
    return { thousandSeedWeightG: lot.thousandSeedWeightG, error: OWN_SEED_WEIGHT_ERROR };
  }
  const deposit = await tx.movement.findFirst({
    where: { packet: { lotId: lot.id }, reason: 'deposit', grams: { gt: 0 }, seeds: { gt: 0 } },
    orderBy: { id: 'asc' },
    select: { seeds: true, grams: true, seedsSd: true },
  });
  if (!deposit?.grams) return null;
  const { seeds, grams, seedsSd } = deposit;
  return { thousandSeedWeightG: (grams * SEEDS_PER_THOUSAND) / seeds, error: errorOfDeposit(seeds, grams, seedsSd) };
}

/** A deposit weighed without a thousand-seed weight was turned into seeds by the crop's usual one, and is off with it. */
function errorOfDeposit(seeds: number, grams: number, seedsSd: number | null): number {
  if (seedsSd === null) return USUAL_SEED_WEIGHT_ERROR;
  if (seedsSd === 0) return OWN_SEED_WEIGHT_ERROR;
  return Math.min(1, seedWeightPart(seeds, grams, seedsSd) / seeds);
}
