import type { Prisma } from '@/generated/prisma/client';
import { splitPacketSchema } from '@/lib/schemas/split-packet';
import { notFound } from '../app-error';
import { newId } from '../new-id';
import { nextNumber } from '../next-number';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { packetBalance } from './packet-balance';
import { requireSafePlacement } from './require-safe-placement';

/**
 * Puts part of a packet into a packet of its own: to lie elsewhere, or as a safety duplicate. The new packet takes the
 * old one's storage history with it, because its seed has aged through all of it.
 */
export const splitPacket = defineCommand({
  name: 'split-packet',
  role: 'volunteer',
  schema: splitPacketSchema,
  async run({ tx, person, today, audit, rejudge }, input) {
    const packet = await tx.packet.findUnique({
      where: { id: input.packetId },
      select: {
        id: true,
        number: true,
        lot: { select: { id: true, number: true } },
        placements: {
          orderBy: [{ from: 'asc' }, { id: 'asc' }],
          select: { storeId: true, from: true, container: true, moisturePercent: true },
        },
      },
    });
    if (!packet) throw notFound('This packet');
    const from = input.from ?? today;
    const last = packet.placements.at(-1);
    if (last && from < last.from)
      throw fieldError({ from: `The packet was last moved on ${last.from}: choose that day or later.` });
    const held = await packetBalance(tx, packet.id);
    if (input.seeds > held) throw fieldError({ seeds: `This packet holds about ${held} seeds.` });
    const storeName = await requireSafePlacement(tx, input);

    const id = newId();
    const number = await nextNumber(
      tx,
      'P',
      5,
      async (taken) => (await tx.packet.count({ where: { number: taken } })) > 0,
    );
    await tx.packet.create({ data: { id, number, lotId: packet.lot.id, role: input.role } });
    await placeNewPacket(tx, id, packet.placements, {
      storeId: input.storeId,
      from,
      container: input.container,
      moisturePercent: input.moisturePercent ?? last?.moisturePercent ?? null,
    });
    const movement = { on: from, reason: 'split', byId: person.id };
    await tx.movement.create({
      data: { id: newId(), packetId: packet.id, seeds: -input.seeds, note: `into ${number}`, ...movement },
    });
    await tx.movement.create({
      data: { id: newId(), packetId: id, seeds: input.seeds, note: `out of ${packet.number}`, ...movement },
    });
    rejudge([packet.lot.id]);
    await audit({
      entity: 'packet',
      entityId: packet.id,
      summary: `Split ${input.seeds} seeds off packet ${packet.number} of lot ${packet.lot.number} as ${number} into ${storeName}`,
      after: { newPacketId: id, number, role: input.role, seeds: input.seeds },
    });
    return { lotNumber: packet.lot.number, packetId: id, number };
  },
});

type PlacementData = { storeId: string; from: string; container: string; moisturePercent: number | null };

async function placeNewPacket(
  tx: Prisma.TransactionClient,
  packetId: string,
  history: PlacementData[],
  placement: PlacementData,
): Promise<void> {
  for (const earlier of [...history, placement]) {
    await tx.placement.create({ data: { id: newId(), packetId, ...earlier } });
  }
}
