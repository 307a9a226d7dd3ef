import { movePacketSchema } from '@/lib/schemas/movement';
import { newId } from '../new-id';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { packetInHand, refuseBeforeLastMove, refuseMoved } from './packet-in-hand';
import { requireSafePlacement } from './require-safe-placement';
import { roleAtPlace } from './role-at-place';

/** From a day on a packet lies elsewhere, in another container, or at another moisture. What was before stays known. */
export const movePacket = defineCommand({
  name: 'move-packet',
  role: 'volunteer',
  schema: movePacketSchema,
  async run({ tx, today, audit, rejudge }, input) {
    const packet = await packetInHand(tx, input.packetId);
    await refuseMoved(tx, packet, input.version);
    const { last } = packet;
    const from = input.from ?? today;
    refuseBeforeLastMove(packet, from, 'from');
    const container = input.container ?? last?.container;
    if (container === undefined) throw fieldError({ container: 'Choose the container.' });
    const moisturePercent = (input.container ? input.moisturePercent : last?.moisturePercent) ?? null;
    const place = await requireSafePlacement(tx, {
      ...input,
      container,
      moisturePercent,
      from,
      cropId: packet.lot.accession.cropId,
      presentStoreId: last?.storeId ?? null,
    });
    const stays = last?.storeId === input.storeId && last.container === container;
    if (stays && last.moisturePercent === moisturePercent) {
      throw fieldError({ storeId: 'The packet lies there already, in this container and at this moisture.' });
    }
    await tx.placement.create({
      data: { id: newId(), packetId: packet.id, storeId: input.storeId, from, container, moisturePercent },
    });
    const role = roleAtPlace(packet.role, place);
    if (role !== packet.role) await tx.packet.update({ where: { id: packet.id }, data: { role } });
    rejudge([packet.lot.id]);
    await audit({
      entity: 'packet',
      entityId: packet.id,
      summary: `Moved packet ${packet.number} of lot ${packet.lot.number}${last ? ` from ${last.store.name}` : ''} to ${place.name} on ${from}${role === packet.role ? '' : ', there a safety duplicate'}`,
      before: last && {
        storeId: last.storeId,
        container: last.container,
        moisturePercent: last.moisturePercent,
        role: packet.role,
      },
      after: { storeId: input.storeId, container, moisturePercent, role },
    });
    return { lotNumber: packet.lot.number, number: packet.number };
  },
});
