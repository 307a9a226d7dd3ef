import type { Prisma } from '@/generated/prisma/client';
import { SEEDS_PER_THOUSAND, seedsFromWeight } from '@/lib/domain/stock/seed-count';
import { takeSeedOutSchema } from '@/lib/schemas/movement';
import { notFound } from '../app-error';
import { newId } from '../new-id';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { packetBalance } from './packet-balance';

/** Takes seed out of a packet for sowing, sharing, discarding, or because it was lost. Never more than there is. */
export const takeSeedOut = defineCommand({
  name: 'take-seed-out',
  role: 'volunteer',
  schema: takeSeedOutSchema,
  async run({ tx, person, today, audit, rejudge }, input) {
    const packet = await tx.packet.findUnique({
      where: { id: input.packetId },
      select: { id: true, number: true, lot: { select: { id: true, number: true, thousandSeedWeightG: true } } },
    });
    if (!packet) throw notFound('This packet');
    const on = input.on ?? today;
    const first = await tx.placement.findFirst({
      where: { packetId: packet.id },
      orderBy: { from: 'asc' },
      select: { from: true },
    });
    if (first && on < first.from) {
      throw fieldError({ on: `This packet was filled on ${first.from}: seed can only have come out since.` });
    }
    const held = await packetBalance(tx, packet.id);
    const seeds = input.unit === 'seeds' ? input.amount : await seedsInGrams(tx, packet, input.amount);
    if (seeds > held) throw fieldError({ amount: `This packet holds about ${held} seeds.` });
    await tx.movement.create({
      data: {
        id: newId(),
        packetId: packet.id,
        on,
        reason: input.reason,
        seeds: -seeds,
        grams: input.unit === 'grams' ? -input.amount : null,
        note: input.note,
        byId: person.id,
      },
    });
    rejudge([packet.lot.id]);
    await audit({
      entity: 'packet',
      entityId: packet.id,
      summary: `Took ${seeds} seeds out of packet ${packet.number} of lot ${packet.lot.number} for ${input.reason}; ${held - seeds} left`,
      before: { seeds: held },
      after: { seeds: held - seeds },
    });
    return { lotNumber: packet.lot.number, seeds, seedsLeft: held - seeds };
  },
});

interface WeighedPacket {
  id: string;
  lot: { thousandSeedWeightG: number | null };
}

/** Grams as seeds, by the lot's thousand-seed weight, or else by what went into this packet weighed and counted. */
async function seedsInGrams(tx: Prisma.TransactionClient, packet: WeighedPacket, grams: number): Promise<number> {
  const thousandSeedWeightG = packet.lot.thousandSeedWeightG ?? (await weightOfDeposit(tx, packet.id));
  if (thousandSeedWeightG === null) {
    throw fieldError({
      amount: 'This lot has no thousand-seed weight, so grams cannot be turned into seeds: count them.',
    });
  }
  const seeds = seedsFromWeight({ weightG: grams, thousandSeedWeightG });
  if (seeds < 1) throw fieldError({ amount: 'This is less than one seed weighs.' });
  return seeds;
}

async function weightOfDeposit(tx: Prisma.TransactionClient, packetId: string): Promise<number | null> {
  const deposit = await tx.movement.findFirst({
    where: { packetId, reason: 'deposit', grams: { gt: 0 }, seeds: { gt: 0 } },
    orderBy: { id: 'asc' },
    select: { seeds: true, grams: true },
  });
  return deposit?.grams ? (deposit.grams * SEEDS_PER_THOUSAND) / deposit.seeds : null;
}
