import { takeSeedOutSchema } from '@/lib/schemas/movement';
import { notFound } from '../app-error';
import { newId } from '../new-id';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { packetBalance } from './packet-balance';
import { seedsInGrams } from './seeds-in-grams';

/** Takes seed out of a packet for sowing, a test, sharing, discarding, or because it was lost. Never more than there is. */
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
    // Not its first placement: a packet that was split off has those of the seed before it was in this packet.
    const filledOn = (await tx.movement.aggregate({ where: { packetId: packet.id }, _min: { on: true } }))._min.on;
    if (filledOn !== null && on < filledOn) {
      throw fieldError({ on: `This packet was filled on ${filledOn}: seed can only have come out since.` });
    }
    const held = await packetBalance(tx, packet.id);
    const { seeds, seedsSd } =
      input.unit === 'seeds' ? { seeds: input.amount, seedsSd: 0 } : await seedsInGrams(tx, packet, input.amount);
    if (seeds > held) throw fieldError({ amount: `This packet holds about ${held} seeds.` });
    await tx.movement.create({
      data: {
        id: newId(),
        packetId: packet.id,
        on,
        reason: input.reason,
        seeds: -seeds,
        grams: input.unit === 'grams' ? -input.amount : null,
        seedsSd,
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
    return { lotNumber: packet.lot.number, number: packet.number, seeds, seedsLeft: held - seeds };
  },
});
