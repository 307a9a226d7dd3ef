import { movePacketSchema } from '@/lib/schemas/movement';
import { notFound } from '../app-error';
import { newId } from '../new-id';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { requireSafePlacement } from './require-safe-placement';

/** From a day on a packet lies elsewhere, in another container, or at another moisture. What was before stays known. */
export const movePacket = defineCommand({
  name: 'move-packet',
  role: 'volunteer',
  schema: movePacketSchema,
  async run({ tx, today, audit, rejudge }, input) {
    const packet = await tx.packet.findUnique({
      where: { id: input.packetId },
      select: {
        number: true,
        lot: { select: { id: true, number: true } },
        placements: {
          orderBy: [{ from: 'desc' }, { id: 'desc' }],
          take: 1,
          select: {
            from: true,
            container: true,
            moisturePercent: true,
            storeId: true,
            store: { select: { name: true } },
          },
        },
      },
    });
    if (!packet) throw notFound('This packet');
    const [last] = packet.placements;
    const from = input.from ?? today;
    if (last && from < last.from) {
      throw fieldError({
        from: `The packet has been in ${last.store.name} since ${last.from}: choose that day or later.`,
      });
    }
    const storeName = await requireSafePlacement(tx, input);
    const moisturePercent = input.moisturePercent ?? null;
    if (
      last &&
      last.storeId === input.storeId &&
      last.container === input.container &&
      last.moisturePercent === moisturePercent
    ) {
      throw fieldError({ storeId: 'The packet lies there already, in this container and at this moisture.' });
    }
    await tx.placement.create({
      data: {
        id: newId(),
        packetId: input.packetId,
        storeId: input.storeId,
        from,
        container: input.container,
        moisturePercent,
      },
    });
    rejudge([packet.lot.id]);
    await audit({
      entity: 'packet',
      entityId: input.packetId,
      summary: `Moved packet ${packet.number} of lot ${packet.lot.number}${last ? ` from ${last.store.name}` : ''} to ${storeName} on ${from}`,
      before: last && { storeId: last.storeId, container: last.container, moisturePercent: last.moisturePercent },
      after: { storeId: input.storeId, container: input.container, moisturePercent },
    });
    return { lotNumber: packet.lot.number };
  },
});
