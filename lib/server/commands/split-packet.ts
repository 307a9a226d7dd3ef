import type { Prisma } from '@/generated/prisma/client';
import { packetRoleLabel } from '@/lib/domain/stock/packet-roles';
import { splitPacketSchema } from '@/lib/schemas/split-packet';
import { newId } from '../new-id';
import { nextNumber } from '../next-number';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { packetBalance } from './packet-balance';
import { type PacketInHand, packetInHand, refuseBeforeLastMove, refuseMoved } from './packet-in-hand';
import { recordPacking } from './record-packing';
import { requireSafePlacement } from './require-safe-placement';
import { roleAtPlace } from './role-at-place';
import { seedsInGrams } from './seeds-in-grams';

/**
 * Puts part of a packet into a packet of its own: to lie elsewhere, for another purpose, or as a safety duplicate. The
 * new packet takes the old one's storage history with it, because its seed has aged through all of it.
 */
export const splitPacket = defineCommand({
  name: 'split-packet',
  role: 'volunteer',
  schema: splitPacketSchema,
  async run({ tx, person, today, audit, rejudge }, input) {
    const packet = await packetInHand(tx, input.packetId);
    await refuseMoved(tx, packet, input.version);
    const from = input.from ?? today;
    refuseBeforeLastMove(packet, from, 'from');
    const held = await packetBalance(tx, packet.id);
    const grams = input.unit === 'grams' ? input.amount : null;
    const { seeds, seedsSd } =
      grams === null ? { seeds: input.amount, seedsSd: 0 } : await seedsInGrams(tx, packet, grams);
    if (seeds > held) throw fieldError({ amount: `This packet holds about ${held} seeds.` });
    // What was not measured anew has the moisture that it had.
    const moisturePercent = input.moisturePercent ?? packet.last?.moisturePercent ?? null;
    const place = await requireSafePlacement(tx, {
      ...input,
      from,
      moisturePercent,
      cropId: packet.lot.accession.cropId,
      presentStoreId: null,
    });
    const role = roleAtPlace(input.role, place);

    const id = newId();
    const number = await nextNumber(
      tx,
      'P',
      5,
      async (taken) => (await tx.packet.count({ where: { number: taken } })) > 0,
    );
    await tx.packet.create({ data: { id, number, lotId: packet.lot.id, role } });
    const { storeId, container } = input;
    await placeNewPacket(tx, id, packet.placements, { storeId, from, container, moisturePercent });
    await recordPacking(tx, { ...input, packetId: id, on: from, byId: person.id }, false);
    const line = { on: from, reason: 'split', byId: person.id, seedsSd, pairId: newId() };
    await tx.movement.create({
      data: {
        ...line,
        id: newId(),
        packetId: packet.id,
        seeds: -seeds,
        grams: grams === null ? null : -grams,
        note: `into ${number}`,
      },
    });
    await tx.movement.create({
      data: { ...line, id: newId(), packetId: id, seeds, grams, note: `out of ${packet.number}` },
    });
    rejudge([packet.lot.id]);
    await audit({
      entity: 'packet',
      entityId: packet.id,
      summary: `Split ${seeds} seeds off packet ${packet.number} of lot ${packet.lot.number} as ${number} (${packetRoleLabel(role)}) into ${place.name}`,
      before: { seeds: held },
      after: { seeds: held - seeds, newPacketId: id, number, role },
    });
    return { lotNumber: packet.lot.number, packetId: id, number };
  },
});

type NewPlacement = Pick<PacketInHand['placements'][number], 'storeId' | 'from' | 'container' | 'moisturePercent'>;

async function placeNewPacket(
  tx: Prisma.TransactionClient,
  packetId: string,
  history: NewPlacement[],
  placement: NewPlacement,
): Promise<void> {
  for (const { storeId, from, container, moisturePercent } of [...history, placement]) {
    await tx.placement.create({ data: { id: newId(), packetId, storeId, from, container, moisturePercent } });
  }
}
