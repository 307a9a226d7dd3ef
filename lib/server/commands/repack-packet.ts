import { packetCareNow } from '@/lib/domain/stock/packet-care';
import { repackPacketSchema } from '@/lib/schemas/packet';
import { AppError } from '../app-error';
import { newId } from '../new-id';
import { careLines } from './care-lines';
import { defineCommand } from './command';
import { packetInHand, refuseBeforeLastMove, refuseMoved } from './packet-in-hand';
import { recordPacking } from './record-packing';
import { requireSafePacking } from './require-safe-placement';

/**
 * Puts a packet's seed into another container, or dries it and seals it anew, in the same place. The stay in the old
 * container ends on that day.
 */
export const repackPacket = defineCommand({
  name: 'repack-packet',
  role: 'volunteer',
  schema: repackPacketSchema,
  async run({ tx, person, today, audit, rejudge }, input) {
    const packet = await packetInHand(tx, input.packetId);
    await refuseMoved(tx, packet, input.version);
    const { last } = packet;
    if (!last) throw new AppError('refused', 'Nobody wrote down where this packet lies: move it first.');
    const on = input.from ?? today;
    refuseBeforeLastMove(packet, on, 'from');
    requireSafePacking(last.store, { ...input, cropId: packet.lot.accession.cropId });
    const moisturePercent = input.moisturePercent ?? null;
    const { desiccant } = packetCareNow(await careLines(tx, packet.id), true);
    await tx.placement.create({
      data: {
        id: newId(),
        packetId: packet.id,
        storeId: last.storeId,
        from: on,
        container: input.container,
        moisturePercent,
      },
    });
    await recordPacking(tx, { ...input, on, byId: person.id }, desiccant !== null);
    rejudge([packet.lot.id]);
    await audit({
      entity: 'packet',
      entityId: packet.id,
      summary: `Repacked packet ${packet.number} of lot ${packet.lot.number} on ${on}: ${input.container}, ${moisturePercent === null ? 'moisture not measured' : `${moisturePercent} % moist`}${input.sealed ? ', sealed' : ''}`,
      before: { container: last.container, moisturePercent: last.moisturePercent },
      after: { container: input.container, moisturePercent, sealed: input.sealed, desiccant: input.desiccant ?? null },
    });
    return { lotNumber: packet.lot.number, number: packet.number };
  },
});
