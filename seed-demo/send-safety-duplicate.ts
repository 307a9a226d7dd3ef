import { z } from 'zod';
import { idOf } from '../lib/schemas/choice-field';
import { pastOrTodayDate, positiveSeedCount } from '../lib/schemas/field-schemas';
import { placementFields } from '../lib/schemas/movement';
import { notFound } from '../lib/server/app-error';
import { defineCommand } from '../lib/server/commands/command';
import { fieldError } from '../lib/server/commands/field-error';
import { packetBalance } from '../lib/server/commands/packet-balance';
import { requireSafePlacement } from '../lib/server/commands/require-safe-placement';
import { newId } from '../lib/server/new-id';
import { nextNumber } from '../lib/server/next-number';

/** @param today  'YYYY-MM-DD' at the bank */
const sendSafetyDuplicateSchema = (today: string) =>
  z.object({
    packetId: idOf('packet'),
    ...placementFields,
    seeds: positiveSeedCount,
    on: pastOrTodayDate(today),
  });

/** Part of a packet goes into a packet of its own at a partner bank: out of one ledger, into the other, never lost. */
export const sendSafetyDuplicate = defineCommand({
  name: 'send-safety-duplicate',
  role: 'steward',
  schema: sendSafetyDuplicateSchema,
  async run({ tx, person, audit, rejudge }, input): Promise<{ packetId: string; packetNumber: string }> {
    const { seeds, on } = input;
    const packet = await tx.packet.findUnique({
      where: { id: input.packetId },
      select: { id: true, number: true, lot: { select: { id: true, number: true } } },
    });
    if (!packet) throw notFound('This packet');
    const storeName = await requireSafePlacement(tx, input);
    const held = await packetBalance(tx, packet.id);
    if (seeds > held) throw fieldError({ seeds: `This packet holds about ${held} seeds.` });
    const packetId = newId();
    const packetNumber = await nextNumber(
      tx,
      'P',
      5,
      async (taken) => (await tx.packet.findUnique({ where: { number: taken }, select: { id: true } })) !== null,
    );
    const entry = { on, byId: person.id };
    await tx.packet.create({ data: { id: packetId, number: packetNumber, lotId: packet.lot.id, role: 'safety' } });
    await tx.placement.create({
      data: {
        id: newId(),
        packetId,
        storeId: input.storeId,
        from: on,
        container: input.container,
        moisturePercent: input.moisturePercent,
      },
    });
    await tx.movement.create({
      data: {
        ...entry,
        id: newId(),
        packetId: packet.id,
        reason: 'sharing',
        seeds: -seeds,
        note: `Safety duplicate, packet ${packetNumber}`,
      },
    });
    await tx.movement.create({
      data: { ...entry, id: newId(), packetId, reason: 'deposit', seeds, note: `From packet ${packet.number}` },
    });
    rejudge([packet.lot.id]);
    await audit({
      entity: 'packet',
      entityId: packetId,
      summary: `Sent ${seeds} seeds of lot ${packet.lot.number} as safety duplicate ${packetNumber} to ${storeName}`,
      before: { seeds: held },
      after: { seeds: held - seeds },
    });
    return { packetId, packetNumber };
  },
});
